// The usual steps of programming a control module, offered as a starting list that a person then fits to the vehicle. Not a plan:
// order rules, and the maker's own order that comes before all of this, live elsewhere.
import type { DriveKind } from '../vehicle/identity.ts';
import type { CautionKey } from '../work/cautions.ts';
import type { ModuleOrigin, ProgrammingStep } from './programming-job.ts';

/** What a module does, as far as the usual steps differ by it. */
export type ModuleKind =
  | 'body'
  | 'engine'
  | 'immobiliser'
  | 'cluster'
  | 'radio'
  | 'airbag'
  | 'chassis'
  | 'driver-assistance'
  | 'high-voltage'
  | 'other';

export const moduleKinds: readonly ModuleKind[] = [
  'body',
  'engine',
  'immobiliser',
  'cluster',
  'radio',
  'airbag',
  'chassis',
  'driver-assistance',
  'high-voltage',
  'other',
];

export type StandardStep = Omit<ProgrammingStep, 'id'>;

export type StepSituation = {
  readonly kind: ModuleKind;
  readonly origin: ModuleOrigin;
  readonly drive: DriveKind;
};

const wordsOfKind: readonly (readonly [ModuleKind, RegExp])[] = [
  ['airbag', /airbag|srs|restraint/],
  ['immobiliser', /immobili[sz]er|key|transponder|steering lock/],
  ['high-voltage', /high.?voltage|traction|inverter|hybrid|charger|battery management/],
  ['driver-assistance', /camera|radar|lane|parking|driver assist/],
  ['cluster', /cluster|instrument|dash/],
  ['radio', /radio|audio|head unit|infotainment|navigation/],
  ['chassis', /brake|abs|steering|suspension|stability/],
  ['engine', /engine|powertrain|transmission|gearbox|fuel|\b(ecm|pcm|tcm)\b/],
  ['body', /body|\bbcm\b|door|central electric|lighting/],
];

/** Guesses the kind from the name a person gave the module; 'other' when nothing fits. Only a first choice in a list. */
export function guessModuleKind(name: string): ModuleKind {
  const lower = name.toLowerCase();
  return wordsOfKind.find(([, words]) => words.test(lower))?.[0] ?? 'other';
}

function step(
  title: string,
  detail: string,
  typicalMinutes: number | null,
  more: Partial<Pick<StandardStep, 'cautions' | 'cannotBeUndone' | 'needsPart' | 'needsCode'>> = {},
): StandardStep {
  return {
    title,
    detail,
    typicalMinutes,
    cautions: [],
    cannotBeUndone: false,
    needsPart: false,
    needsCode: false,
    leftOutReason: '',
    ...more,
  };
}

const needsAntiTheftWork: readonly ModuleKind[] = ['body', 'engine', 'immobiliser', 'cluster'];

function beforeRemoval({ kind, drive, origin }: StepSituation): StandardStep[] {
  const steps = [
    step(
      'Scan every module and keep the result',
      'Before anything is unplugged: afterwards nobody can tell which codes were there.',
      20,
    ),
  ];
  if (kind === 'high-voltage')
    steps.push(
      step(
        'Have the high-voltage system isolated and proved dead',
        'By a qualified person only, as the maker describes.',
        null,
        {
          cautions: ['high-voltage'],
        },
      ),
    );
  if (origin !== 'kept')
    steps.push(
      step(
        'Read and save the data of the old module',
        'VIN, software and part numbers, configuration, mileage where it holds one. If it does not answer, write that down.',
        30,
        { cautions: ['keep-old-module', 'supply-voltage'] },
      ),
    );
  if (origin === 'used')
    steps.push(
      step(
        'Find out whether the used module can be matched to this vehicle',
        'Same part number and software family, not locked to its old vehicle. Before it is unpacked, so that it can still go back.',
        20,
        { needsPart: true },
      ),
    );
  if (drive !== 'combustion' && kind !== 'high-voltage' && origin !== 'kept') {
    // The twelve-volt side of a hybrid or electric vehicle is worked on beside the high-voltage system.
    steps.push(
      step(
        'Make the vehicle safe to work on beside its high-voltage system',
        'Keys away, system off, as the maker describes.',
        15,
        {
          cautions: ['high-voltage'],
        },
      ),
    );
  }
  return steps;
}

function fitting({ kind, origin }: StepSituation): StandardStep[] {
  if (origin === 'kept') return [];
  const cautions: CautionKey[] = kind === 'airbag' ? ['airbag-battery', 'keep-old-module'] : ['keep-old-module'];
  const fit = step(
    kind === 'airbag'
      ? 'Battery off, wait as the maker says, fit the module'
      : 'Battery negative lead off, fit the module',
    'Compare the part number and the plug before it goes in. Label the old module and keep it.',
    45,
    { needsPart: true, cautions: kind === 'body' ? [...cautions, 'airbag-battery', 'moving-vehicle'] : cautions },
  );
  if (origin !== 'cloned') return [fit];
  const clone = step('Copy the saved data of the old module onto the replacement', 'Usually on the bench.', 40, {
    needsPart: true,
    cannotBeUndone: true,
    cautions: ['never-interrupt', 'supply-voltage'],
  });
  return [clone, fit];
}

function writing({ kind, origin }: StepSituation): StandardStep[] {
  const supply = step(
    'Connect the supply and write down the volts',
    'Consumers off, doors and bonnet as the maker says.',
    10,
    {
      cautions: ['supply-voltage'],
    },
  );
  const software = step(
    'Write the software',
    'The version for this VIN. Nobody touches the vehicle while it runs.',
    45,
    {
      needsPart: origin !== 'kept',
      cannotBeUndone: true,
      cautions: ['never-interrupt', 'supply-voltage'],
    },
  );
  const configuration = step(
    'Write the configuration',
    'Equipment of this vehicle: from the saved data, or as the maker lists it for this VIN.',
    25,
    { needsPart: origin !== 'kept', cautions: ['never-interrupt', 'supply-voltage'] },
  );
  const vin = step('Write the VIN', 'Read the VIN from the vehicle and from the screen, character by character.', 10, {
    needsPart: true,
    cannotBeUndone: true,
    cautions: ['vin-permanent', 'never-interrupt', 'supply-voltage'],
  });
  const compareVin = step(
    'Read the VIN out of the module and compare it',
    'With the plate, character by character.',
    5,
    {
      needsPart: origin !== 'kept',
    },
  );
  const antiTheft = step(
    kind === 'immobiliser' ? 'Teach the immobiliser and all keys' : 'Match the module to the immobiliser and the keys',
    'Every key that belongs to the vehicle in hand. Count the tries: some units lock after a few.',
    30,
    {
      needsPart: origin !== 'kept',
      needsCode: true,
      cannotBeUndone: true,
      cautions: ['anti-theft-code', 'supply-voltage'],
    },
  );
  const radio = step(
    'Enter the unlock code of the unit',
    'One careful try; after a wrong one wait as the unit says.',
    10,
    {
      needsPart: origin !== 'kept',
      needsCode: true,
      cautions: ['anti-theft-code'],
    },
  );
  const matching = needsAntiTheftWork.includes(kind) ? [antiTheft] : kind === 'radio' ? [radio] : [];
  switch (origin) {
    case 'new':
      return [supply, software, vin, configuration, ...matching];
    case 'used':
      return [supply, software, vin, configuration, ...matching];
    case 'repaired':
      return [supply, compareVin, configuration, ...(kind === 'radio' ? [radio] : [])];
    case 'cloned':
      return [supply, compareVin];
    case 'kept':
      return [supply, software, ...matching];
  }
}

function proving({ kind, origin }: StepSituation): StandardStep[] {
  const steps: StandardStep[] = [];
  if (kind === 'chassis')
    steps.push(step('Calibrate the sensors that the module reads', 'Zero points, as the maker describes.', 30));
  if (kind === 'driver-assistance')
    steps.push(
      step(
        'Calibrate camera or radar',
        'Level floor, tyre pressures, targets as the maker describes; else send it out.',
        60,
      ),
    );
  steps.push(
    step(
      'Cycle the ignition and let the modules sleep',
      'Off, locked, key away, as long as the maker says; then on again.',
      15,
    ),
    step('Clear the codes in every module', 'This also sets the inspection monitors back.', 5),
    step('Scan every module again', 'Enter it as the post-repair scan.', 20),
    step(
      'Try every function of the module, standing',
      kind === 'body'
        ? 'Lights, wipers, horn, locks, windows, steering lock.'
        : 'And whether the engine starts with each key.',
      15,
      { cautions: kind === 'body' ? ['moving-vehicle'] : [] },
    ),
  );
  if (origin !== 'kept' && kind !== 'radio')
    steps.push(
      step(
        'Look for units that lock after power was off',
        'A radio that lost power may ask for its own code: open a code request for it.',
        5,
      ),
    );
  return steps;
}

/** The usual steps in their usual order for one module. Common practice, no source; the maker's service information comes first. */
export function standardSteps(situation: StepSituation): readonly StandardStep[] {
  return [...beforeRemoval(situation), ...fitting(situation), ...writing(situation), ...proving(situation)];
}
