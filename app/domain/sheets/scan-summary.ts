// The scan on arrival beside the scan after the repair, for a reader who was not there: counts, codes, modules that stayed silent.
import type { Scan, ScanCode } from '../diagnosis/scan.ts';
import { plural } from '../shared/text.ts';
import type { SheetBlock } from './sheet.ts';
import { joined, plain, quiet, showDay, strong } from './sheet-words.ts';

function byTime(a: Scan, b: Scan): number {
  if (a.takenOn !== b.takenOn) return a.takenOn < b.takenOn ? -1 : 1;
  return a.entered.at < b.entered.at ? -1 : 1;
}

/** The first scan that was no post-repair scan, and the last that was one; either may be missing. */
export function scansBeforeAndAfter(scans: readonly Scan[]): {
  readonly before: Scan | null;
  readonly after: Scan | null;
} {
  const sorted = [...scans].sort(byTime);
  const after = sorted.filter((scan) => scan.kind === 'post-repair');
  return { before: sorted.find((scan) => scan.kind !== 'post-repair') ?? null, after: after[after.length - 1] ?? null };
}

function codeWords({ code, status }: ScanCode): string {
  return status === 'present' ? code : `${code} (${status})`;
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

/** A code counts as the same when the module and its digits are; its status may have changed. */
function codeKeys(scan: Scan): ReadonlyMap<string, string> {
  return new Map(
    scan.modules.flatMap((module) =>
      module.codes.map(({ code }) => [`${module.name.trim().toLowerCase()} ${code}`, `${code} in ${module.name}`]),
    ),
  );
}

/** What became of the codes and silent modules between the two scans, a sentence each. */
export function scanOutcome(before: Scan, after: Scan): readonly string[] {
  const earlier = codeKeys(before);
  const later = codeKeys(after);
  const answersNow = new Set(
    after.modules.filter((module) => module.answered).map((module) => module.name.trim().toLowerCase()),
  );
  const pick = (keys: ReadonlyMap<string, string>, isWanted: (key: string) => boolean) =>
    [...keys].filter(([key]) => isWanted(key)).map(([, words]) => words);
  const wasAsked = new Set(after.modules.map((module) => module.name.trim().toLowerCase()));
  const moduleOf = (key: string) => key.slice(0, key.lastIndexOf(' '));
  // A code of a module that does not answer now, or was not asked, is not gone: nobody knows.
  const gone = pick(earlier, (key) => !later.has(key) && answersNow.has(moduleOf(key)));
  const unknown = pick(earlier, (key) => !later.has(key) && !answersNow.has(moduleOf(key)));
  const stayed = pick(later, (key) => earlier.has(key));
  const added = pick(later, (key) => !earlier.has(key));
  const silentBefore = silentModules(before);
  const silentNow = silentModules(after);
  const isSilentNow = (name: string) => silentNow.some((other) => other.trim().toLowerCase() === name);
  const answersAgain = silentBefore.filter((name) => answersNow.has(name.trim().toLowerCase()));
  const notAsked = silentBefore.filter(
    (name) => !wasAsked.has(name.trim().toLowerCase()) && !isSilentNow(name.trim().toLowerCase()),
  );
  const line = (lead: string, items: readonly string[]) =>
    items.length === 0 ? [] : [`${lead}: ${items.join(', ')}.`];
  const lines = [
    ...line('Gone', gone),
    ...line('Stayed', stayed),
    ...line('New after the repair', added),
    ...line('Not known, because the module was not read after the repair', unknown),
    ...line('Answers again', answersAgain),
    ...line('Still silent', silentNow),
    ...line('Silent on arrival and not asked again', notAsked),
  ];
  return lines.length === 0 ? ['No codes and no silent module in either scan.'] : lines;
}

function scanRow(title: string, scan: Scan | null) {
  if (scan === null) return [strong(title), strong('not taken'), quiet(''), quiet(''), quiet('')];
  const count = scan.modules.reduce((sum, module) => sum + module.codes.length, 0);
  const silent = silentModules(scan);
  const answered = scan.modules.length - silent.length;
  return [
    strong(title),
    plain(joined([showDay(scan.takenOn), scan.device])),
    plain(`${answered} of ${plural(scan.modules.length, 'module', 'modules')}`),
    plain(count === 0 ? 'none' : `${count}: ${listCodes(scan)}`),
    silent.length === 0 ? plain('none') : strong(silent.join(', ')),
  ];
}

export function scanBlocks(scans: readonly Scan[]): readonly SheetBlock[] {
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
    rows: [scanRow('On arrival', before), scanRow('After repair', after)],
    whenEmpty: '',
    rowRoom: 'text',
  };
  const outcome: SheetBlock[] =
    before !== null && after !== null ? [{ kind: 'bullets', items: scanOutcome(before, after) }] : [];
  return [{ kind: 'heading', level: 2, text: 'Scans before and after' }, table, ...outcome];
}
