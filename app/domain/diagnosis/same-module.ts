// Which module of one scan is which module of another: by name, else by kind where there is no doubt. Devices name modules differently.
import type { ScannedCode, ScannedModule } from './compare-scans.ts';
import { kindOfModuleName } from './module-kinds.ts';
import type { ScanCodeStatus } from './scan.ts';
import { foldText } from './scanner-words.ts';

export type MergedModule = { readonly name: string; answered: boolean; readonly codes: Map<string, ScannedCode> };

const seriousness: readonly ScanCodeStatus[] = ['unknown', 'history', 'pending', 'permanent', 'present'];

/** The same for names that differ in case, accents and punctuation only. */
export function moduleKey(name: string): string {
  return foldText(name).replace(/[^\p{L}\p{N}]+/gu, '');
}

/** Modules of the same name as one; a code listed twice counts once, with its most serious status. */
export function mergeModules(modules: readonly ScannedModule[]): ReadonlyMap<string, MergedModule> {
  const merged = new Map<string, MergedModule>();
  for (const { name, answered, codes } of modules) {
    const key = moduleKey(name);
    const module: MergedModule = merged.get(key) ?? { name, answered: false, codes: new Map() };
    merged.set(key, module);
    module.answered ||= answered;
    for (const code of codes) {
      const known = module.codes.get(code.code);
      const isGraver = known === undefined || seriousness.indexOf(code.status) > seriousness.indexOf(known.status);
      if (isGraver) module.codes.set(code.code, code);
    }
  }
  return merged;
}

export type ModulePair = { readonly old: MergedModule | null; readonly now: MergedModule | null };

/** The only module of each kind; a kind that two names speak of is left out. */
function onlyOfKind(modules: ReadonlyMap<string, MergedModule>): ReadonlyMap<string, string> {
  const found = new Map<string, string | null>();
  for (const [key, { name }] of modules) {
    const kind = kindOfModuleName(name);
    if (kind !== null) found.set(kind, found.has(kind) ? null : key);
  }
  return new Map([...found].flatMap(([kind, key]) => (key === null ? [] : [[kind, key] as const])));
}

/** Every module of either scan once, in the order of the earlier scan and then of the later one. */
export function matchModules(
  before: ReadonlyMap<string, MergedModule>,
  after: ReadonlyMap<string, MergedModule>,
): readonly ModulePair[] {
  const kindsAfter = onlyOfKind(after);
  const sameKind = new Map<string, string>();
  for (const [kind, key] of onlyOfKind(before)) {
    const other = kindsAfter.get(kind);
    if (other !== undefined && !after.has(key) && !before.has(other)) sameKind.set(key, other);
  }
  const taken = new Set(sameKind.values());
  const fromBefore = [...before].map(([key, old]) => ({ old, now: after.get(sameKind.get(key) ?? key) ?? null }));
  const onlyAfter = [...after].filter(([key]) => !before.has(key) && !taken.has(key));
  return [...fromBefore, ...onlyAfter.map(([, now]) => ({ old: null, now }))];
}
