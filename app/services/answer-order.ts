// Which calls are answered before a long ledger has been read, and which go before the program's own work.
import type { ChannelInput, ChannelName } from '../contract/channels.ts';
import type { DeskContext } from './desk-context.ts';

/** What is answered before the whole fleet has been read; nearly everything else may rest on vehicles that were sold. */
const answeredAtOnce: readonly ChannelName[] = [
  'desk:read',
  'desk:set-theme',
  'lot:read',
  'people:sign-in',
  'people:wait',
  'people:lock',
  'people:active',
  'shop:read',
  'programming:pack',
];

/** Opening, changing and its history, of a vehicle that is there already. A stock number or VIN has to be looked for among all. */
function isOfOneThere(context: DeskContext, name: ChannelName, input: ChannelInput<ChannelName>): boolean {
  if (name !== 'vehicle:open' && name !== 'vehicle:change' && name !== 'vehicle:history') return false;
  const { id, change } = input as { readonly id: string; readonly change?: ChannelInput<'vehicle:change'>['change'] };
  const isIdentity = change?.kind === 'set' && change.section === 'identity';
  return !isIdentity && context.store.vehicles().has(id);
}

/** What a person does with one vehicle, dozens of times a day: the program's own work stands back meanwhile. */
export const goesFirst: readonly ChannelName[] = [
  'vehicle:open',
  'vehicle:change',
  'vehicle:take-in',
  'edit:undo',
  'edit:redo',
];

export function waitsForTheSold(context: DeskContext, name: ChannelName, input: ChannelInput<ChannelName>): boolean {
  return !answeredAtOnce.includes(name) && !isOfOneThere(context, name, input);
}
