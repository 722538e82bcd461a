// Taking in a purchase list: a look at its columns, trying it out, and taking the chosen rows in as one act that one undo takes back.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { guessColumns, headerKey, type ListMatch } from '../domain/import/list-columns.ts';
import { type ListReading, type TriedRow, tryList } from '../domain/import/try-list.ts';
import { guessDayForm, guessDecimalForm } from '../domain/import/value-forms.ts';
import { ok, type Result } from '../domain/shared/result.ts';
import { plural } from '../domain/shared/text.ts';
import { takeInVehicle } from '../domain/vehicle/take-in.ts';
import { storageSentence } from '../storage/storage-problem.ts';
import { type Answer, type DeskContext, refuse, refuseStorage } from './desk-context.ts';
import { type ReadList, readList } from './read-list.ts';
import type { StepPart } from './undo-stack.ts';

const mostRemembered = 30;

function rememberedMatch(context: DeskContext, headers: readonly string[]): ListMatch | null {
  const key = headerKey(headers);
  return context.deps.deskSettings.get().listMatches.findLast((kept) => kept.headers === key)?.match ?? null;
}

function remember(context: DeskContext, headers: readonly string[], match: ListMatch): void {
  const key = headerKey(headers);
  const others = context.deps.deskSettings.get().listMatches.filter((kept) => kept.headers !== key);
  context.deps.deskSettings.change({ listMatches: [...others, { headers: key, match }].slice(-mostRemembered) });
}

export async function lookAtList(
  context: DeskContext,
  { text }: ChannelInput<'list:look'>,
): Answer<ChannelOutput<'list:look'>> {
  const list = readList(text);
  if (!list.ok) return refuse('bad-list', list.error);
  const { separator, headers, rows } = list.value;
  const columns = headers.map((_header, column) =>
    rows.map((row) => row[column] ?? '').filter((value) => value.trim() !== ''),
  );
  const kept = rememberedMatch(context, headers);
  return ok({
    separator,
    headers,
    examples: columns.map((values) => values.slice(0, 3).map((value) => value.trim().slice(0, 60))),
    rowCount: rows.length,
    match: guessColumns(headers, kept),
    isRemembered: kept !== null,
    decimalForms: columns.map((values) => guessDecimalForm(values)),
    dayForms: columns.map((values) => guessDayForm(values, context.shop().dealer.market === 'US')),
  });
}

function tried(context: DeskContext, { headers, rows }: ReadList, reading: ListReading): readonly TriedRow[] {
  const { dealer } = context.shop();
  const fleet = [...context.store.vehicles().values()].map(({ data }) => ({
    stockNumber: data.identity.stockNumber,
    vin: data.identity.vin,
    isSold: data.sale !== null,
  }));
  const setting = { today: context.today(), market: dealer.market, fleet, paperKind: dealer.paperName };
  return tryList(rows, headers, reading, setting);
}

export async function tryOutList(
  context: DeskContext,
  { text, reading }: ChannelInput<'list:try'>,
): Answer<ChannelOutput<'list:try'>> {
  const list = readList(text);
  if (!list.ok) return refuse('bad-list', list.error);
  return ok(tried(context, list.value, reading).map(({ takeIn: _takeIn, ...row }) => row));
}

async function takeInRow(context: DeskContext, row: TriedRow, what: string): Promise<Result<StepPart, string>> {
  if (row.takeIn === null) return { ok: false, error: row.problems[0] ?? 'Something stands against this row.' };
  const id = context.deps.newIdentifier();
  const made = takeInVehicle(id, row.takeIn, context.changeContext());
  if (!made.ok) return { ok: false, error: made.error.map(({ sentence }) => sentence).join(' ') };
  const saved = await context.store.saveVehicle(made.value, 0, context.telling('take-in', what));
  if (!saved.ok) return { ok: false, error: storageSentence(saved.error.code) };
  context.forecasts.noteChange(id, saved.value.data);
  return ok({ vehicleId: id, before: null, after: saved.value.data });
}

/** Goes on after a row that fails: what was taken in is there, what was left is said with its reason. */
export async function takeInList(
  context: DeskContext,
  { text, reading, rows }: ChannelInput<'list:take-in'>,
): Answer<ChannelOutput<'list:take-in'>> {
  const list = readList(text);
  if (!list.ok) return refuse('bad-list', list.error);
  if (context.store.isReadOnly) return refuse('read-only');
  if (context.store.shop() === null) {
    const settled = await context.store.saveShop(context.shop(), 0);
    if (!settled.ok) return refuseStorage(settled.error);
  }
  remember(context, list.value.headers, reading.match);
  const chosen = new Set(rows);
  const what = 'taken in from a list';
  const parts: StepPart[] = [];
  const taken: ChannelOutput<'list:take-in'>['taken'][number][] = [];
  const left: ChannelOutput<'list:take-in'>['left'][number][] = [];
  for (const row of tried(context, list.value, reading)) {
    if (!chosen.has(row.row)) continue;
    const done = await takeInRow(context, row, what);
    if (done.ok) {
      parts.push(done.value);
      taken.push({ id: done.value.vehicleId, stockNumber: row.stockNumber });
    } else left.push({ row: row.row, stockNumber: row.stockNumber, sentence: done.error });
  }
  const [first, ...further] = parts;
  if (first !== undefined) {
    const label = `${plural(parts.length, 'vehicle', 'vehicles')} ${what}`;
    context.undo.push({ ...first, label, what, further });
    context.deps.emit('lot:all-changed', {});
  }
  return ok({ taken, left, desk: context.desk() });
}
