// The scan on arrival beside the scan after the repair, for a reader who was not there: counts, codes, modules that stayed silent.
import { type CodeChangeKind, compareScans, contentOf, type ModuleChangeKind } from '../diagnosis/compare-scans.ts';
import type { Scan, ScanCode } from '../diagnosis/scan.ts';
import { scansBeforeAndAfter } from '../diagnosis/scan-order.ts';
import { type DayForm, showDay } from '../shared/show-day.ts';
import { plural } from '../shared/text.ts';
import type { SheetBlock } from './sheet.ts';
import { joined, plain, quiet, strong } from './sheet-words.ts';

function codeWords({ code, status, isUnproven }: ScanCode): string {
  const words = [...(status === 'present' ? [] : [status]), ...(isUnproven ? ['not tested since the clear'] : [])];
  return words.length === 0 ? code : `${code} (${words.join(', ')})`;
}

/** 'P0562 in Engine control, U0140 (history) in Gateway'. */
function listCodes(scan: Scan): string {
  return scan.modules
    .filter((module) => module.codes.length > 0)
    .map((module) => `${module.name}: ${module.codes.map(codeWords).join(', ')}`)
    .join('; ');
}

function silentModules(scan: Scan): readonly string[] {
  return scan.modules.filter((module) => !module.answered).map((module) => module.name);
}

/** What became of the codes and silent modules between the two scans, a sentence each. Judged in app/domain/diagnosis. */
export function scanOutcome(before: Scan, after: Scan): readonly string[] {
  const { codes, modules } = compareScans(contentOf(before), contentOf(after));
  const codesThat = (...kinds: readonly CodeChangeKind[]) =>
    codes.filter((one) => kinds.includes(one.change)).map((one) => `${one.code} in ${one.module}`);
  const modulesThat = (...kinds: readonly ModuleChangeKind[]) =>
    modules.filter((one) => kinds.includes(one.change)).map((one) => one.module);
  // Some modules list every test that has not run yet; only what was there before is told to a reader.
  const unproven = codes
    .filter((one) => one.change === 'cleared-not-proven' && one.before !== null)
    .map((one) => `${one.code} in ${one.module}`);
  const silentBefore = new Set(silentModules(before));
  const notAsked = modulesThat('only-before').filter((name) => silentBefore.has(name));
  const line = (lead: string, items: readonly string[]) =>
    items.length === 0 ? [] : [`${lead}: ${items.join(', ')}.`];
  const lines = [
    ...line('Gone', codesThat('gone')),
    ...line('Cleared, not proven yet because the test has not run since', unproven),
    ...line('Stayed', codesThat('stayed')),
    ...line('New after the repair', codesThat('new')),
    ...line('Not known, because the module was not read after the repair', codesThat('not-heard')),
    ...line('Answers again', modulesThat('came-back')),
    ...line('Still silent', silentModules(after)),
    ...line('Silent on arrival and not asked again', notAsked),
  ];
  return lines.length === 0 ? ['No codes and no silent module in either scan.'] : lines;
}

function scanRow(title: string, scan: Scan | null, dayForm: DayForm) {
  if (scan === null) return [strong(title), strong('not taken'), quiet(''), quiet(''), quiet('')];
  const count = scan.modules.reduce((sum, module) => sum + module.codes.length, 0);
  const silent = silentModules(scan);
  const answered = scan.modules.length - silent.length;
  return [
    strong(title),
    plain(joined([showDay(scan.takenOn, dayForm), scan.device])),
    plain(`${answered} of ${plural(scan.modules.length, 'module', 'modules')}`),
    plain(count === 0 ? 'none' : `${count}: ${listCodes(scan)}`),
    silent.length === 0 ? plain('none') : strong(silent.join(', ')),
  ];
}

export function scanBlocks(scans: readonly Scan[], dayForm: DayForm): readonly SheetBlock[] {
  const { before, after } = scansBeforeAndAfter(scans);
  const table: SheetBlock = {
    kind: 'table',
    caption: 'Scan on arrival and scan after the repair',
    columns: [
      { title: 'Scan', share: 16, align: 'left' },
      { title: 'Day, device', share: 18, align: 'left' },
      { title: 'Answered', share: 14, align: 'left' },
      { title: 'Trouble codes', share: 35, align: 'left' },
      { title: 'Silent', share: 17, align: 'left' },
    ],
    rows: [scanRow('On arrival', before, dayForm), scanRow('After repair', after, dayForm)],
    whenEmpty: '',
    rowRoom: 'text',
  };
  const outcome: SheetBlock[] =
    before !== null && after !== null ? [{ kind: 'bullets', items: scanOutcome(before, after) }] : [];
  return [{ kind: 'heading', level: 2, text: 'Scans before and after' }, table, ...outcome];
}
