// Who may open a printed file through the program, told from its name: whoever may print every kind of sheet in it. Reads no file.
import type { Rights } from '../domain/people/role-rights.ts';
import { type AnySheetKind, anySheetKindSchema } from '../domain/sheets/sheet.ts';

/** How a kind is written in the name of a file that holds several. Together they stay below the longest name that can be written. */
const shortNames: Readonly<Record<AnySheetKind, string>> = {
  'job-sheet': 'job',
  'plan-sheet': 'plan',
  'readiness-sheet': 'readiness',
  'window-sheet': 'window',
  'code-letter': 'letter',
  'cost-sheet': 'cost',
  'parts-list': 'parts',
  'fleet-list': 'fleet',
  'money-summary': 'money',
};

/** 'sheets-2026-03-18-0900-job-cost.pdf': the minute (of an ISO instant), and each kind that is in it. */
export function togetherName(at: string, kinds: readonly AnySheetKind[], rights: Rights): string {
  const stamp = at.slice(0, 16).replace('T', '-').replace(':', '');
  const words = anySheetKindSchema.options.filter((kind) => kinds.includes(kind)).map((kind) => shortNames[kind]);
  const name = `sheets-${stamp}-${words.join('-')}.pdf`;
  return kinds.includes('fleet-list') ? listName(name, rights) : name;
}

/** The name of a file with the fleet list says whether margins or forecasts stand on it: that goes by who prints it. */
export function listName(fileName: string, { seesMoney, seesForecast }: Rights): string {
  const what = seesMoney ? '-with-margins' : seesForecast ? '-with-forecasts' : '';
  return fileName.replace(/\.pdf$/, `${what}.pdf`);
}

function kindsTogether(fileName: string): readonly AnySheetKind[] | null {
  const plain = fileName.replace(/-with-(margins|forecasts)\.pdf$/, '.pdf');
  const words = /^sheets-\d{4}-\d\d-\d\d-\d{4}-([a-z-]+)\.pdf$/.exec(plain)?.[1]?.split('-') ?? [];
  const kinds = words.flatMap((word) => anySheetKindSchema.options.filter((kind) => shortNames[kind] === word));
  return kinds.length > 0 && kinds.length === words.length ? kinds : null;
}

/** Every kind whose name stands in it, wherever: a stock number that looks like a kind only makes it stricter. */
function kindsNamed(fileName: string): readonly AnySheetKind[] {
  return anySheetKindSchema.options.filter((kind) => new RegExp(`(^|-)${kind}(-|\\.pdf$)`).test(fileName));
}

/** A file whose name says nothing could hold anything, so it takes the right to print everything. */
export function mayOpenSheet(fileName: string, { prints, printsOfFleet, seesMoney, seesForecast }: Rights): boolean {
  if (fileName.endsWith('-with-margins.pdf') && !seesMoney) return false;
  if (fileName.endsWith('-with-forecasts.pdf') && !seesForecast) return false;
  const allowed: readonly AnySheetKind[] = [...prints, ...printsOfFleet];
  const named = kindsTogether(fileName) ?? kindsNamed(fileName);
  const needed = named.length > 0 ? named : anySheetKindSchema.options;
  return needed.every((kind) => allowed.includes(kind));
}
