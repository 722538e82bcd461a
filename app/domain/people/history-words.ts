// A line of a vehicle's history in plain words: which fact, from which value to which. Leaves out what a role may not see.
import { showCents } from '../shared/cents.ts';
import type { ChangedPart, HistoryEntry, HistoryKind } from './history-entry.ts';
import { presencePlace } from './history-entry.ts';
import type { Rights } from './role-rights.ts';

export type ToldChange = {
  /** 'Part “Control module”: ordered on' */
  readonly what: string;
  readonly from: string;
  readonly to: string;
};

const placeNames: Readonly<Record<string, string>> = {
  identity: 'Vehicle details',
  purchase: 'Purchase',
  arrival: 'Arrival',
  targets: 'Targets',
  sale: 'Sale',
  scans: 'Scan',
  batteryReadings: 'Battery reading',
  faults: 'Fault',
  jobs: 'Programming job',
  attempts: 'Programming attempt',
  parts: 'Part',
  codeRequests: 'Code request',
  labour: 'Booked work',
  sublets: 'Sublet work',
  otherCosts: 'Cost',
  signOffs: 'Sign-off',
  notes: 'Note',
  attachments: 'Photograph or document',
};

const kindWords: Readonly<Record<HistoryKind, string>> = {
  'take-in': 'Taken in',
  change: '',
  undo: 'Taken back',
  redo: 'Done again',
  withdraw: 'Withdrawn from the lot',
  'bring-back': 'Brought back into the lot',
  restore: 'Put back from a backup',
  'put-code': 'Code put in the vault',
  'look-at-code': 'Code looked at',
  'destroy-code': 'Code destroyed',
};

const mostChanges = 40;
const longestValue = 160;
const nothing = 'nothing';
/** Not a person's business: who first entered a fact is told by the line that added it. */
const untold = new Set(['id', 'entered', 'sha256', 'smallSha256', 'printSha256', 'widthDots', 'heightDots']);
/** Places and fields that say something about money without being an amount. */
const moneyPlaces = new Set(['targets', 'otherCosts']);
const moneyFields = new Set(['fundingPlanId', 'paidOffOn']);

function wordsOf(key: string): string {
  const plain = key.replace(/Cents$/, '').replace(/Id$/, '');
  return plain.replace(/([a-z])([A-Z0-9])/g, (_, end: string, start: string) => `${end} ${start.toLowerCase()}`);
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function maySee(list: string, key: string, rights: Rights): boolean {
  if (rights.seesMoney) return true;
  if (list === 'parts' && rights.seesPartPrices) return true;
  return !/Cents$/.test(key) && !moneyFields.has(key);
}

function valueWords(key: string, value: unknown, names: ReadonlyMap<string, string>): string {
  if (value === null || value === undefined || value === '') return nothing;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return /Cents$/.test(key) ? showCents(value) : String(value);
  if (Array.isArray(value)) {
    if (value.length === 0) return nothing;
    const isPlain = value.every((each) => typeof each !== 'object');
    return isPlain ? value.join(', ').slice(0, longestValue) : `${value.length} entered`;
  }
  if (typeof value !== 'string') return 'entered';
  const name = names.get(value);
  if (name !== undefined) return name;
  if (/Id$/.test(key) && key !== 'checkId') return 'one that is named';
  return value.length > longestValue ? `${value.slice(0, longestValue - 1)}…` : value;
}

type Ground = { readonly list: string; readonly rights: Rights; readonly names: ReadonlyMap<string, string> };

/** Fields that differ, however deep in the fact they are. */
function differences(before: unknown, after: unknown, path: string, ground: Ground): ToldChange[] {
  const was = isObject(before) ? before : {};
  const is = isObject(after) ? after : {};
  return [...new Set([...Object.keys(was), ...Object.keys(is)])].flatMap((key): ToldChange[] => {
    const [old, present] = [was[key] ?? null, is[key] ?? null];
    if (untold.has(key) || !maySee(ground.list, key, ground.rights)) return [];
    if (JSON.stringify(old) === JSON.stringify(present)) return [];
    const what = path === '' ? wordsOf(key) : `${path}, ${wordsOf(key)}`;
    if (isObject(old) || isObject(present)) return differences(old, present, what, ground);
    const [from, to] = [valueWords(key, old, ground.names), valueWords(key, present, ground.names)];
    if (from !== to) return [{ what, from, to }];
    return from === nothing ? [] : [{ what, from, to: Array.isArray(present) ? 'other entries' : 'another one' }];
  });
}

function titleOf(part: ChangedPart, list: string): string {
  const fact = isObject(part.after) ? part.after : part.before;
  const name = isObject(fact) ? [fact.what, fact.module, fact.name, fact.title].find((each) => !!each) : null;
  const place = placeNames[list] ?? 'Record';
  return typeof name === 'string' ? `${place} “${name.slice(0, 60)}”` : place;
}

/** Whoever may not see it now or did not see it before is told nothing of it. */
function readsAttachment({ before, after }: ChangedPart, rights: Rights): boolean {
  const mayRead = (fact: unknown) =>
    !isObject(fact) || rights.readsAttachmentsFor.some((readers) => readers === fact.readers);
  return mayRead(before) && mayRead(after);
}

function toldOf(part: ChangedPart, rights: Rights, names: ReadonlyMap<string, string>): ToldChange[] {
  const [list = ''] = part.place.split('/');
  if (list === 'codeRequests' && !rights.seesCodes) return [];
  if (moneyPlaces.has(list) && !rights.seesMoney) return [];
  if (list === 'attachments' && !readsAttachment(part, rights)) return [];
  const title = titleOf(part, list);
  return differences(part.before, part.after, '', { list, rights, names }).map((change) => ({
    ...change,
    what: `${title}: ${change.what}`,
  }));
}

/** The entry as this role may read it; null when there is nothing in it that it may. `names`: people and checks by identity. */
export function tellEntry(
  entry: HistoryEntry,
  rights: Rights,
  names: ReadonlyMap<string, string>,
): { readonly what: string; readonly changes: readonly ToldChange[]; readonly isShortened: boolean } | null {
  const facts = entry.parts.filter(
    (part) => part.place !== presencePlace && (part.before !== null || part.after !== null),
  );
  const changes = facts.flatMap((part) => toldOf(part, rights, names));
  if (changes.length === 0 && facts.length > 0 && !rights.seesMoney) return null;
  if (entry.isShortened && !rights.seesMoney) return null;
  const kind = kindWords[entry.kind];
  const isSaidByKind = entry.kind === 'take-in' || entry.kind === 'withdraw' || entry.label === '';
  const what = kind === '' ? entry.label : isSaidByKind ? kind : `${kind}: ${entry.label}`;
  const isShortened = entry.isShortened || changes.length > mostChanges;
  return {
    what: what.charAt(0).toUpperCase() + what.slice(1),
    changes: changes.slice(0, mostChanges),
    isShortened,
  };
}
