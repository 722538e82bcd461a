// Reading what changed on a vehicle, in words and by role. Writes nothing: entries are written with the changes they tell of.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { tellEntry } from '../domain/people/history-words.ts';
import { ok } from '../domain/shared/result.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';

const linesAtOnce = 30;

export async function readVehicleHistory(
  context: DeskContext,
  input: ChannelInput<'vehicle:history'>,
): Answer<ChannelOutput<'vehicle:history'>> {
  if (!context.visible(input.id)) return refuse('not-found');
  const read = await context.store.readHistory(input.id, input.place, linesAtOnce);
  if (!read.ok) return refuseStorage(read.error);
  const { people, checklist } = context.shop();
  const names = new Map<string, string>([
    ...checklist.map(({ id, title }) => [id, title] as const),
    ...people.map(({ id, name }) => [id, name] as const),
  ]);
  const rights = context.rights();
  const lines = read.value.lines.flatMap((line) => {
    const told = tellEntry(line, rights, names);
    const { at, reason, wasSaved } = line;
    return told === null ? [] : [{ at, by: names.get(line.by) ?? line.by, reason, wasSaved, ...told }];
  });
  const faults = [...new Set(read.value.faults.map((fault) => fault.sentence))];
  return ok({ lines, faults, older: read.value.older });
}
