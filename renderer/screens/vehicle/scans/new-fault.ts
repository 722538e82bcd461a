// The draft of a fault from a code or from a module that many point at, and the fault that is already there for it. Pure.
import type { FaultDraft } from '../../../../app/domain/diagnosis/fault.ts';
import type { LikelyRoot } from '../../../../app/domain/diagnosis/likely-roots.ts';
import { kindOfModuleName, type ModuleKind, moduleKindWords } from '../../../../app/domain/diagnosis/module-kinds.ts';
import { moduleKey } from '../../../../app/domain/diagnosis/same-module.ts';
import type { Vehicle } from '../../../../app/domain/vehicle/vehicle.ts';
import type { WorkArea } from '../../../../app/domain/work/work-area.ts';
import { rootText, scanText } from '../../../text/scans.ts';

export type NewFault = Pick<FaultDraft, 'what' | 'area' | 'module' | 'codes'>;

const longestWhat = 200;
const areaByKind: Readonly<Record<ModuleKind, WorkArea>> = {
  engine: 'engine',
  transmission: 'transmission',
  brakes: 'brakes',
  body: 'electrical',
  airbag: 'airbag',
  'instrument-cluster': 'electrical',
  steering: 'steering-suspension',
  'steering-lock': 'immobiliser-keys',
  gateway: 'electrical',
  immobiliser: 'immobiliser-keys',
  climate: 'climate',
  radio: 'electrical',
  seat: 'interior',
  door: 'body',
  'camera-or-radar': 'electrical',
  'high-voltage': 'high-voltage',
};

/** A network code is about a module or its lines; another code is about what its module looks after. */
function areaOf(code: string, module: string): WorkArea {
  const kind = kindOfModuleName(module);
  if (code.startsWith('U')) return 'control-module';
  return kind === null ? 'electrical' : areaByKind[kind];
}

export function faultFromCode(code: string, module: string, words: string): NewFault {
  const what = words.trim() === '' ? scanText.codeOf(code, module) : words.trim();
  return { what: what.slice(0, longestWhat), area: areaOf(code, module), module, codes: [code] };
}

export function faultFromRoot(root: LikelyRoot): NewFault {
  const module = root.module ?? (root.kind === null ? '' : moduleKindWords[root.kind]);
  const what = root.module === null ? rootText.unnamedFault(module) : rootText.silentFault(root.module);
  const codes = [...new Set(root.witnesses.map((one) => one.code))];
  return { what: what.slice(0, longestWhat), area: 'control-module', module: root.module ?? '', codes };
}

type Faults = Pick<Vehicle, 'faults'>;

/** The fault that carries this code; a code without its failure type stands for all of them. */
export function faultWithCode({ faults }: Faults, code: string): Vehicle['faults'][number] | null {
  const stem = code.slice(0, 5);
  return faults.find((fault) => fault.codes.some((one) => one === code || one === stem)) ?? null;
}

/** The fault about the module that the root names, or one that carries one of its codes. */
export function faultOfRoot(vehicle: Faults, root: LikelyRoot): Vehicle['faults'][number] | null {
  const key = moduleKey(root.module ?? '');
  const aboutModule = key === '' ? undefined : vehicle.faults.find((fault) => moduleKey(fault.module) === key);
  if (aboutModule !== undefined) return aboutModule;
  const found = root.witnesses.map((one) => faultWithCode(vehicle, one.code)).find((fault) => fault !== null);
  return found ?? null;
}
