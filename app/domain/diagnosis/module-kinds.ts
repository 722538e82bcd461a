// Which kind of control module a name or a communication code speaks of. A help for grouping codes, never a statement about a vehicle.
import { foldText } from './scanner-words.ts';

export const moduleKinds = [
  'engine',
  'transmission',
  'brakes',
  'body',
  'airbag',
  'instrument-cluster',
  'steering',
  'steering-lock',
  'gateway',
  'immobiliser',
  'climate',
  'radio',
  'seat',
  'door',
  'camera-or-radar',
  'high-voltage',
] as const;
export type ModuleKind = (typeof moduleKinds)[number];

export const moduleKindWords: Readonly<Record<ModuleKind, string>> = {
  engine: 'engine or powertrain module',
  transmission: 'transmission module',
  brakes: 'brake module',
  body: 'body control module',
  airbag: 'airbag module',
  'instrument-cluster': 'instrument cluster',
  steering: 'power steering module',
  'steering-lock': 'steering lock or column module',
  gateway: 'gateway',
  immobiliser: 'immobiliser or anti-theft module',
  climate: 'climate module',
  radio: 'radio',
  seat: 'seat module',
  door: 'door module',
  'camera-or-radar': 'camera or radar module',
  'high-voltage': 'high-voltage battery or drive module',
};

/**
 * SAE J2012 numbers for "nothing heard from" (U01xx) and "what it sends makes no sense" (U04xx), the common ones, from memory. Makers'
 * own network codes are not here: what they speak of is the maker's to say.
 */
const kindByNumber: ReadonlyMap<string, ModuleKind> = new Map(
  (
    [
      ['engine', 'U0100 U0401'],
      ['transmission', 'U0101 U0402'],
      ['brakes', 'U0121 U0122 U0129 U0415 U0416 U0418'],
      ['body', 'U0140 U0141 U0142 U0422'],
      ['airbag', 'U0151 U0452'],
      ['instrument-cluster', 'U0155 U0423'],
      ['steering', 'U0131 U0420'],
      ['steering-lock', 'U0212 U0236'],
      ['gateway', 'U0146 U0447'],
      ['immobiliser', 'U0167 U0168 U0426'],
      ['climate', 'U0164 U0424'],
      ['radio', 'U0184'],
      ['seat', 'U0208 U0209'],
      ['door', 'U0199 U0200 U0201 U0202'],
      ['camera-or-radar', 'U0235 U023A'],
      ['high-voltage', 'U0110 U0111 U0293'],
    ] as const
  ).flatMap(([kind, numbers]) => numbers.split(' ').map((number) => [number, kind] as const)),
);

/** Folded words in a module's name, most telling kinds first: a 'steering lock' is no power steering. From memory, several languages. */
const namePatterns: readonly (readonly [ModuleKind, RegExp])[] = [
  [
    'steering-lock',
    /steering (?:column )?lock|column lock|lenkradschloss|lenkschloss|verrou de direction|bloqueo de direccion|bloccasterzo|stuurslot/,
  ],
  [
    'immobiliser',
    /immobili|anti ?theft|wegfahrsperre|antidemarrage|inmovilizador|startonderbreker|\bkeyless|\bkeys?\b/,
  ],
  ['gateway', /gateway|pasarela/],
  ['high-voltage', /high voltage|hochvolt|traction|haute tension|\bbecm\b|\bhv\b/],
  ['airbag', /airbag|restraint|\bsrs\b|\brcm\b|\bsdm\b/],
  ['instrument-cluster', /cluster|instrument|kombi|combine\b|cuadro|quadro|zegary|\bipc?\b/],
  ['camera-or-radar', /camera|radar|kamera/],
  ['climate', /climat|klima|heater|hvac|\bclima\b|klimatyzacja/],
  ['radio', /radio|audio/],
  ['seat', /\bseat|\bsitz|siege|asiento|sedile|fotel|stoel/],
  ['door', /\bdoor|\btur\b|tursteuergerat|porte\b|puerta|\bporta\b|drzwi|\bdeur/],
  ['transmission', /transmission|gearbox|getriebe|boite|caja de cambios|\bcambio\b|skrzyni|versnellingsbak|\btcm\b/],
  ['brakes', /brake|\babs\b|\besp\b|brems|frein|freno|freni|hamul|remmen|\bebcm\b/],
  ['steering', /steering|lenkung|direction\b|direccion|sterzo|stuur|\beps\b|\bpscm\b/],
  ['body', /\bbody|karosserie|bordnetz|carross|carroc|carrozz|nadwozi|habitacle|\bbcm\b/],
  ['engine', /engine|powertrain|\bmotor|moteur|motore|silnik|\becm\b|\bpcm\b/],
];

/** The kind that a communication code speaks of, or null when it is no such code or not known here. */
export function kindOfCommunicationCode(code: string): ModuleKind | null {
  return kindByNumber.get(code.slice(0, 5)) ?? null;
}

/** Names looked at already: a fleet's scans name the same few modules again and again. Begun anew before it grows large. */
const kindsByName = new Map<string, ModuleKind | null>();
const mostNames = 5_000;

/** The kind that a module's name speaks of, or null. */
export function kindOfModuleName(name: string): ModuleKind | null {
  const known = kindsByName.get(name);
  if (known !== undefined) return known;
  const folded = foldText(name).replace(/[-_/]+/g, ' ');
  const kind = namePatterns.find(([, pattern]) => pattern.test(folded))?.[0] ?? null;
  if (kindsByName.size >= mostNames) kindsByName.clear();
  kindsByName.set(name, kind);
  return kind;
}
