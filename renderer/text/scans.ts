// Words of scans and of the battery: reports, monitors, comparisons, likely roots, the shop's own notebook.
import type { BatteryChemistry } from '../../app/domain/diagnosis/battery-charge.ts';
import type { CodeChange, CodeChangeKind, ModuleChangeKind } from '../../app/domain/diagnosis/compare-scans.ts';
import type { DiagnosticBus } from '../../app/domain/diagnosis/diagnostic-reply.ts';
import type { MonitorJudgement } from '../../app/domain/diagnosis/judge-monitors.ts';
import { type MonitorReading, monitorWords } from '../../app/domain/diagnosis/readiness-monitors.ts';
import type { ScanCodeStatus, ScanKind } from '../../app/domain/diagnosis/scan.ts';
import type { LineUse } from '../../app/domain/diagnosis/scanner-reading.ts';
import type { CodeController, CodeSystem } from '../../app/domain/diagnosis/trouble-code.ts';
import { plural } from '../../app/domain/shared/text.ts';

export const scanText = {
  add: 'Add scan',
  empty: 'No scan yet. A vehicle that does not answer is scanned too: enter its modules as silent.',
  takenOn: 'Taken on',
  kind: 'Kind',
  kinds: {
    'pre-repair': 'Before the repair',
    'in-between': 'In between',
    'post-repair': 'After the repair',
  } satisfies Record<ScanKind, string>,
  device: 'Device',
  clearedBefore: 'Codes were cleared before it',
  modules: 'Modules',
  module: 'Module',
  answered: 'Answered',
  silent: 'silent',
  silentModules: 'Silent',
  codes: 'Trouble codes',
  codesHint:
    'Type codes and Enter for the next module; Ctrl+Enter saves. A status, “untested” or words may follow a code.',
  code: 'Code',
  statusLabel: 'Status',
  words: 'Words',
  untested: 'untested',
  untestedTip: 'Its test has not run since the codes were cleared.',
  note: 'Note',
  likeLast: (count: number) => `Write in the names of the ${count} modules of the last scan`,
  takeOut: 'Take out',
  removeModule: (name: string) => `Take out ${name || 'this module'}`,
  addCodes: 'Add codes',
  addCodesTo: (name: string) => `Add codes to ${name}`,
  removeCode: (code: string) => `Take out ${code}`,
  codeOf: (code: string, module: string) => `${code} in ${module || 'a module without a name'}`,
  noCodes: 'no codes',
  notUnderstood: (parts: readonly string[]) =>
    `Not read as a trouble code: ${parts.slice(0, 6).join(' ')}. Codes are written like P0171 or U0140-00; put words after the code they belong to.`,
  moduleNameMissing: 'Which module is it?',
  silentWithCodes: 'A module that did not answer has no codes: take them out, or tick that it answered.',
  slipsToLookAt: 'Look at the codes that were read through a slip: say that they are right, or correct them.',
  slip: (original: string) => `The report says “${original}”.`,
  slipIsRight: 'It is right',
  slipIsRightFor: (code: string) => `It is right: ${code}`,
  statusByte: (byte: number) => `status byte ${byte.toString(16).toUpperCase().padStart(2, '0')}`,
  status: {
    present: 'present',
    history: 'history',
    pending: 'pending',
    permanent: 'permanent',
    unknown: 'status not known',
  } satisfies Record<ScanCodeStatus, string>,
  name: (kind: string, day: string) => `${kind}, ${day}`,
  latest: (kind: string, day: string) => `Last scan: ${kind}, ${day}`,
  clean: (count: number) => `${plural(count, 'module', 'modules')} answered without a code`,
} as const;

export const reportText = {
  label: 'Report of the scanner',
  paste: 'Paste a report',
  hint: 'Paste the scanner’s text, or drop a marked passage or a text file here. Read on this machine; nothing is sent.',
  counts: (count: { lines: number; modules: number; silent: number; codes: number; notRead: number }) =>
    [
      plural(count.lines, 'line', 'lines'),
      plural(count.modules, 'module', 'modules'),
      ...(count.silent > 0 ? [`${count.silent} silent`] : []),
      plural(count.codes, 'code', 'codes'),
      count.notRead === 0 ? 'every line read' : `${plural(count.notRead, 'line', 'lines')} not read`,
    ].join(' · '),
  onlyNotRead: 'Only lines not read',
  change: 'Change the text',
  readAgain: 'Read it',
  takeOut: 'Take the report out',
  line: 'Line',
  text: 'Report',
  readAs: 'Read as',
  uses: {
    blank: '',
    module: 'module',
    code: 'code',
    detail: 'belongs to the code above',
    silent: 'silent',
    'no-codes': 'no codes',
    'status-heading': 'status of the codes below',
    'column-heading': 'names of the columns',
    'not-understood': 'not read',
  } satisfies Record<LineUse, string>,
  leaveOut: (code: string) => `Leave out ${code}`,
  leftOut: (code: string) => `${code} left out`,
  isModule: 'It names a module',
  isModuleFor: (text: string) => `It names a module: ${text}`,
  notText: 'Only text can be read here. Open the file in its own viewer, mark the text and drag or paste it.',
  tooLarge: 'This file is too large for a scanner’s report. Paste the pages with modules and codes.',
  tooLong: (length: number, most: number) =>
    `The report has ${length.toLocaleString('en')} characters, and ${most.toLocaleString('en')} can be kept. Take out the pages without modules and codes.`,
} as const;

export const rawText = {
  open: 'Enter raw reply bytes',
  title: 'Raw reply of a module',
  hint: 'Without header and checksum: 43 02 01 33 04 20, or 59 02 FF 0A 9B 17 24. Services 03, 07, 0A and 19 are read.',
  module: 'Module',
  bus: 'Bus',
  buses: { can: 'CAN', older: 'before CAN' } satisfies Record<DiagnosticBus, string>,
  bytes: 'Bytes',
  notBytes: (token: string) => `“${token}” is not a byte. Two hexadecimal digits each, 00 to FF.`,
  kinds: {
    stored: 'stored codes (service 03)',
    pending: 'pending codes (service 07)',
    permanent: 'permanent codes (service 0A)',
    'by-status': 'codes with their status (service 19)',
    count: 'a count of codes (service 19 01)',
    cleared: 'the clear is confirmed',
    refused: 'the module refuses',
    'not-understood': 'not read',
  },
  found: (kind: string, codes: number) => `${kind}: ${plural(codes, 'code', 'codes')}`,
  counted: (count: number) => `The module says it has ${plural(count, 'code', 'codes')}.`,
  add: 'Put into the scan',
  needsModule: 'Say which module it came from.',
  needsCodes: 'Enter a reply that lists codes first.',
  stored: 'stored',
  close: 'Close',
} as const;

export const monitorText = {
  title: 'Inspection monitors',
  enter: 'Enter monitors',
  notApplicable: 'A battery-electric vehicle has no inspection monitors.',
  notRead: 'not read',
  bytes: 'Bytes A B C D',
  bytesHint: 'From service 01 PID 01, with or without 41 01 before them; or tick below.',
  notFourBytes: 'Four bytes of two hexadecimal digits, for example 00 07 65 04.',
  lamp: 'Lamp commanded on',
  count: 'Confirmed codes',
  ignition: 'Ignition',
  ignitions: { spark: 'Spark', compression: 'Compression' } satisfies Record<MonitorReading['ignition'], string>,
  states: { none: 'not fitted', complete: 'complete', incomplete: 'incomplete' },
  takeOut: 'Take the monitors out',
  warmUps: 'Warm-ups since clear',
  distance: 'Driven since clear',
  ready: 'all complete',
  incomplete: (names: MonitorReading['incomplete']) =>
    `incomplete: ${names.map((name) => monitorWords[name]).join(', ')}`,
  lampOn: 'lamp commanded on',
  noScheme: 'No inspection is chosen in Setup, so nothing is judged.',
  noModelYear: 'Without a model year nothing can be judged.',
  verdicts: {
    passes: 'would pass',
    fails: 'would fail',
    'no-rule': 'no rule here',
    'not-applicable': 'not applicable',
  } satisfies Record<MonitorJudgement['verdict'], string>,
  judged: (scheme: string, verdict: string) => `${scheme}: ${verdict}`,
  source: (source: string, dated: string) => `${source} (${dated})`,
  why: 'Why they are incomplete',
  inRecord: (what: string, day: string) => `${what}, ${day}`,
} as const;

export const comparisonText = {
  title: 'Compared',
  before: 'Earlier scan',
  after: 'Later scan',
  against: 'against',
  became: {
    new: 'New',
    stayed: 'Stayed',
    'cleared-not-proven': 'Cleared, not proven',
    'not-heard': 'Not known',
    gone: 'Gone',
  } satisfies Record<CodeChangeKind, string>,
  answer: {
    'still-silent': 'silent both times',
    'fell-silent': 'fell silent',
    'came-back': 'answers again',
    'only-before': 'not in the later scan',
    'only-after': 'not in the earlier scan',
  } satisfies Record<ModuleChangeKind, string>,
  /** Beside a code, in few words: its status where that says it, the whole sentence where proof is the question. */
  how: ({ change, before, after, isProven, sentence }: Omit<CodeChange, 'code' | 'module' | 'moduleBefore'>) => {
    if (change === 'new') return scanText.status[after ?? 'unknown'];
    if (change === 'stayed')
      return before === after
        ? scanText.status[after ?? 'unknown']
        : `${scanText.status[before ?? 'unknown']} → ${scanText.status[after ?? 'unknown']}`;
    return change === 'gone' && isProven ? 'tested since the clear' : sentence;
  },
  nothing: 'No codes and no silent module in either scan.',
  makeFault: 'Make it a fault',
  makeFaultOf: (what: string) => `Make it a fault: ${what}`,
  isFault: 'Fault',
  isFaultOf: (what: string) => `Go to the fault: ${what}`,
  lastTime: 'Last time',
  lastTimeOf: (code: string) => `Last time: ${code}`,
} as const;

export const rootText = {
  title: 'Where to look first',
  silentFault: (module: string) => `${module} does not answer`,
  unnamedFault: (kind: string) => `No word from the ${kind}`,
  strength: { likely: 'likely', possible: 'possible' },
} as const;

const controllers: Readonly<Record<CodeController, string>> = {
  standard: 'standard number',
  maker: 'maker’s own number',
  reserved: 'number kept free by the standard',
};
const systems: Readonly<Record<CodeSystem, string>> = {
  powertrain: 'powertrain',
  chassis: 'chassis',
  body: 'body',
  network: 'network',
};

export const codeDetailText = {
  line: (system: CodeSystem, controlledBy: CodeController) => `${systems[system]}, ${controllers[controlledBy]}`,
  failure: (hex: string, words: string | null) => (words === null ? `type ${hex}` : `${words} (${hex})`),
  hint: (area: string) => `perhaps ${area}`,
  unfinished: 'programming, coding or the right part is still missing',
} as const;

export const notebookText = {
  title: 'The shop’s own notebook',
  reading: 'Looking through earlier vehicles …',
  match: {
    both: (count: number) => `${plural(count, 'earlier case', 'earlier cases')} with this module and code`,
    code: (count: number) => `${plural(count, 'earlier case', 'earlier cases')} with this code in another module`,
    module: (count: number) => `${plural(count, 'earlier case', 'earlier cases')} with this module and other codes`,
  },
  none: 'Nothing like it on earlier vehicles.',
  times: (count: number) => plural(count, 'time', 'times'),
  days: (days: number) => plural(days, 'day', 'days'),
  usually: (amount: string) => `usually ${amount}`,
  usuallyDays: (days: number) => `usually ${plural(days, 'day', 'days')}`,
  incomplete: 'without amounts that are missing',
  route: (name: string, worked: number, tried: number) => `${name} worked ${worked} of ${tried}`,
  routes: 'Attempts at programming',
  left: (count: number) => `${plural(count, 'time', 'times')} it was left as it was.`,
  cases: 'Cases',
} as const;

export const batteryText = {
  add: 'Add battery reading',
  empty: 'Not measured. Measure before programming: a weak battery spoils a write even on a supply.',
  volts: 'Volts',
  measuredOn: 'Measured on',
  charge: 'Charge',
  chemistry: 'Battery',
  chemistries: {
    flooded: 'Flooded',
    efb: 'EFB',
    agm: 'AGM',
    lithium: 'Lithium',
  } satisfies Record<BatteryChemistry, string>,
  temperature: 'Temperature',
  isRested: 'Rested six hours or more, loads off',
  restHint: 'Without a rest the volts do not tell the charge: they are kept, and nothing is worked out from them.',
  note: 'Note',
  notRested: 'not rested: no charge told',
  notTold: 'volts do not tell it',
  percent: (percent: number) => `${percent} %`,
  corrected: (volts: number) => `read at ${volts.toFixed(2)} V, corrected for temperature.`,
  freezes: (celsius: number) => `In this state it freezes at about ${String(celsius).replace('-', '−')} °C.`,
  name: (volts: number, day: string) => `${volts.toFixed(2)} V, ${day}`,
} as const;
