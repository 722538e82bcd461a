// What a scan after the repair leaves open: live codes, silent modules, and repaired codes that are quiet without having been tested.
// Judges the scan; which scan counts and when it goes stale is in proof-gates.ts.
import { type CodeChange, compareScans, contentOf } from '../diagnosis/compare-scans.ts';
import { moduleKey } from '../diagnosis/same-module.ts';
import type { Scan } from '../diagnosis/scan.ts';
import { byTimeTaken } from '../diagnosis/scan-order.ts';
import { readStatusByte } from '../diagnosis/status-byte.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

/** A code written without its failure type stands for all of them: U0140 covers U0140-00. */
function coveredBy(codes: ReadonlySet<string>): (code: string) => boolean {
  return (code) => codes.has(code) || codes.has(code.slice(0, 5));
}

function codesOf(faults: Vehicle['faults']): ReadonlySet<string> {
  return new Set(faults.flatMap((fault) => fault.codes.map((code) => code.trim().toUpperCase())));
}

/** Listed only because its test has not run yet, or because it has run and passed: not a code that fails. */
function isQuiet({ status, isUnproven, statusByte }: Scan['modules'][number]['codes'][number]): boolean {
  if (status === 'history') return true;
  return status === 'unknown' && (isUnproven || (statusByte !== null && readStatusByte(statusByte).isProved));
}

/** Live codes and silent modules that nobody decided to leave, each in a few words. */
export function unresolved(vehicle: Vehicle, scan: Scan): readonly string[] {
  const left = vehicle.faults.filter((fault) => fault.decision?.kind === 'leave');
  const isLeft = coveredBy(codesOf(left));
  const leftModules = new Set(left.map((fault) => moduleKey(fault.module)).filter((key) => key !== ''));
  return scan.modules.flatMap((module) => {
    if (!module.answered) return leftModules.has(moduleKey(module.name)) ? [] : [`${module.name} does not answer`];
    return module.codes
      .filter((code) => !isQuiet(code) && !isLeft(code.code))
      .map((code) => `${code.code} in ${module.name} (${code.status})`);
  });
}

/**
 * Repaired codes that `scan` does not prove, each in a sentence without its full stop: cleared while the test has not run since, or
 * stored by a module that is not in the scan at all. A code counts as repaired when a fault that carries it was decided to be repaired
 * or replaced; one that an earlier scan proved after it was last stored counts as proven. Modules that are in the scan and silent are
 * told by `unresolved`. Common practice, no source.
 */
export function unprovenRepairs(vehicle: Vehicle, scan: Scan): readonly string[] {
  const repaired = vehicle.faults.filter((fault) => fault.decision !== null && fault.decision.kind !== 'leave');
  const isRepaired = coveredBy(codesOf(repaired));
  const silent = new Set(scan.modules.filter((module) => !module.answered).map((module) => moduleKey(module.name)));
  const sentences = lastWordOn(vehicle.scans, scan)
    .filter((one) => isRepaired(one.code))
    .flatMap((one) => {
      if (one.change === 'cleared-not-proven')
        return [`${one.code} in ${one.module}: ${one.sentence.charAt(0).toLowerCase()}${one.sentence.slice(1, -1)}`];
      if (one.change !== 'not-heard' || silent.has(moduleKey(one.module))) return [];
      return [`${one.code} was repaired, but ${one.module} is not in the scan after it. Scan that module too`];
    });
  return [...new Set(sentences)];
}

/** Scans are never altered in place, so what became of the codes between two of them is worked out once for all the days that ask. */
const changesBetween = new WeakMap<Scan, WeakMap<Scan, readonly CodeChange[]>>();

function codeChanges(before: Scan, after: Scan): readonly CodeChange[] {
  const ofBefore = changesBetween.get(before) ?? new WeakMap<Scan, readonly CodeChange[]>();
  changesBetween.set(before, ofBefore);
  const known = ofBefore.get(after);
  if (known !== undefined) return known;
  const fresh = compareScans(contentOf(before), contentOf(after)).codes;
  ofBefore.set(after, fresh);
  return fresh;
}

/** What became of each code since the scan that listed it last, without those that a scan in between proved. */
function lastWordOn(scans: readonly Scan[], scan: Scan): readonly CodeChange[] {
  const earlier = scans.filter((other) => other.id !== scan.id && byTimeTaken(other, scan) < 0).sort(byTimeTaken);
  const onlyHere = compareScans({ modules: [] }, contentOf(scan)).codes;
  const since = earlier.flatMap((before, index) => {
    const between = earlier.slice(index + 1).flatMap((other) => codeChanges(before, other));
    return codeChanges(before, scan).filter((change) => {
      if (change.before === null) return false;
      const same = between.filter((one) => one.code === change.code && one.moduleBefore === change.moduleBefore);
      // A later scan lists it again and speaks for it; or one in between has proven it.
      return !same.some((one) => one.isProven || one.after !== null);
    });
  });
  return [...onlyHere, ...since];
}
