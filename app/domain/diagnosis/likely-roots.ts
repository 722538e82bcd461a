// Groups the communication codes that many modules store about one module under that module as the likely root. A hint with its reasons:
// where to look first, not a diagnosis.
import { plural } from '../shared/text.ts';
import type { ScanContent } from './compare-scans.ts';
import { kindOfCommunicationCode, kindOfModuleName, type ModuleKind, moduleKindWords } from './module-kinds.ts';

export type RootWitness = { readonly module: string; readonly code: string };

export type LikelyRoot = {
  /** The name of the module as scanned, or null when no module of that kind is in the scan. */
  readonly module: string | null;
  /** Null when the codes do not tell which kind of module they speak of. */
  readonly kind: ModuleKind | null;
  /** 'likely': the codes name this kind of module, and it is silent. 'possible': one of the two is missing. */
  readonly strength: 'likely' | 'possible';
  /** Who stores what about it; at least two modules. */
  readonly witnesses: readonly RootWitness[];
  readonly reasoning: string;
};

/** Two modules that agree are the least that is more than one module's own fault (common practice, no source). */
const leastWitnesses = 2;

/**
 * The likely roots of a scan's communication codes, those with most witnesses first. A code names its module through its number where
 * that is a standard one known here (SAE J2012, from memory); otherwise several modules storing the same number while exactly one module
 * is silent is taken as pointing at that one, and said to be a guess.
 */
export function likelyRoots(scan: ScanContent): readonly LikelyRoot[] {
  const silent = [...new Set(scan.modules.filter((module) => !module.answered).map((module) => module.name))];
  const witnesses = scan.modules
    .filter((module) => module.answered)
    .flatMap((module) => module.codes.map(({ code }) => ({ module: module.name, code })))
    .filter((one) => one.code.startsWith('U'));
  const roots = [...rootsByKind(scan, witnesses, silent), ...rootsByLoneSilence(witnesses, silent)];
  return roots.toSorted((a, b) => countModules(b.witnesses) - countModules(a.witnesses));
}

function rootsByKind(scan: ScanContent, witnesses: readonly RootWitness[], silent: readonly string[]): LikelyRoot[] {
  const byKind = groupBy(witnesses, (one) => kindOfCommunicationCode(one.code));
  return [...byKind].flatMap(([kind, all]) => {
    if (kind === null) return [];
    const sameKind = scan.modules
      .filter((module) => kindOfModuleName(module.name) === kind)
      .map((module) => module.name);
    const silentOfKind = silent.filter((name) => sameKind.includes(name));
    const named = silentOfKind.length === 1 ? silentOfKind : sameKind.length === 1 ? sameKind : [];
    const module = named[0] ?? null;
    // What a module says about its own kind is no witness against it.
    const others = all.filter((one) => !sameKind.includes(one.module));
    const count = countModules(others);
    if (count < leastWitnesses) return [];
    const words = moduleKindWords[kind];
    const said = `${plural(count, 'module stores', 'modules store')} codes that speak of the ${words} (${listCodes(others)})`;
    const isSilent = silentOfKind.length > 0;
    const reasoning = isSilent
      ? `${said}, and ${listNames(silentOfKind)} ${silentOfKind.length === 1 ? 'does' : 'do'} not answer. Look at its supply, ground and data lines before the codes of the others.`
      : sameKind.length > 0
        ? `${said}, but ${listNames(sameKind)} answered this scan: the link may come and go, or the codes are older. Clear, drive and scan again.`
        : `${said}, but no such module is in the scan by name. Check whether the vehicle has one and under which name it was scanned.`;
    return [
      { module, kind, strength: isSilent ? ('likely' as const) : ('possible' as const), witnesses: others, reasoning },
    ];
  });
}

function rootsByLoneSilence(witnesses: readonly RootWitness[], silent: readonly string[]): LikelyRoot[] {
  const [module] = silent;
  if (module === undefined || silent.length !== 1) return [];
  const unknown = witnesses.filter((one) => kindOfCommunicationCode(one.code) === null);
  const agreeing = [...groupBy(unknown, (one) => one.code.slice(0, 5)).values()].filter(
    (group) => countModules(group) >= leastWitnesses,
  );
  const all = agreeing.flat();
  if (all.length === 0) return [];
  const reasoning = `${plural(countModules(all), 'module stores', 'modules store')} ${listCodes(all)}, and ${module} is the only module that does not answer. What these numbers mean is the maker's to say, so this is a guess: look it up.`;
  return [{ module, kind: kindOfModuleName(module), strength: 'possible', witnesses: all, reasoning }];
}

function groupBy<Key>(witnesses: readonly RootWitness[], keyOf: (one: RootWitness) => Key): Map<Key, RootWitness[]> {
  const groups = new Map<Key, RootWitness[]>();
  for (const one of witnesses) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return groups;
}

function countModules(witnesses: readonly RootWitness[]): number {
  return new Set(witnesses.map((one) => one.module)).size;
}

function listCodes(witnesses: readonly RootWitness[]): string {
  return [...new Set(witnesses.map((one) => one.code))].join(', ');
}

function listNames(names: readonly string[]): string {
  return names.join(' and ');
}
