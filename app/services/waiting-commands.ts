// Waiting for the page: the list of what is owed from outside as this role may have it, and the same as a file. Reads the fleet only.
import type { ChannelOutput } from '../contract/channels.ts';
import type { ProviderTurnaround, WaitingLineView, WaitingView } from '../contract/waiting-view.ts';
import { codeKindWords } from '../domain/codes/code-name.ts';
import { ok } from '../domain/shared/result.ts';
import { amongWhom, turnaroundOfGroup } from '../domain/time/usual-turnaround.ts';
import { groupsOf, type WaitingLine, type WaitingList, waitingList } from '../domain/time/waiting-list.ts';
import { vehicleTitle } from '../domain/vehicle/identity.ts';
import type { Answer, DeskContext } from './desk-context.ts';
import { waitingTable } from './waiting-table.ts';
import { writeExport } from './write-export.ts';

function listOf(context: DeskContext): WaitingList {
  const shop = context.shop();
  const today = context.today();
  const open = [...context.store.vehicles().values()]
    .map(({ data }) => data)
    .filter(({ sale }) => sale === null)
    .map((vehicle) => ({ vehicle, reckoning: context.reckon(vehicle) }));
  return waitingList(open, { shop, history: context.forecasts.history(shop, today), today });
}

function viewOfLine(line: WaitingLine, seesMoney: boolean): WaitingLineView {
  const { vehicle, expected, chase, lastChase, codeKind: _kind, usual: _usual, dayCents, shareCents, ...rest } = line;
  const { group, ...days } = expected;
  return {
    ...rest,
    vehicleId: vehicle.id,
    stockNumber: vehicle.identity.stockNumber,
    title: vehicleTitle(vehicle.identity),
    expected: { ...days, among: amongWhom(group) },
    chaseOn: chase.on,
    chaseWhy: chase.why,
    lastChase: lastChase && {
      chasedOn: lastChase.chasedOn,
      how: lastChase.how,
      promisedOn: lastChase.promisedOn,
      note: lastChase.note,
    },
    dayCents: seesMoney ? dayCents : null,
    shareCents: seesMoney ? shareCents : null,
  };
}

/** Of those who owe something now, each kind once, the slowest first; whoever has no finished case yet is left out. */
function turnaroundOf({ lines }: WaitingList, context: DeskContext): ProviderTurnaround[] {
  const shop = context.shop();
  const today = context.today();
  const history = context.forecasts.history(shop, today);
  const rows = new Map<string, ProviderTurnaround>();
  for (const line of lines) {
    const [group] = groupsOf(line);
    if (line.provider === '' || group === undefined) continue;
    const key = `${line.kind}|${group}`;
    const found = rows.has(key) ? null : turnaroundOfGroup(history, line.kind, group, today);
    if (found === null) continue;
    const { group: _group, ...figures } = found;
    const codeKind = line.kind === 'code' ? codeKindWords(line.codeKind, shop.codeKinds) : '';
    rows.set(key, { provider: line.provider, kind: line.kind, codeKind, ...figures });
  }
  return [...rows.values()].sort((a, b) => b.medianDays - a.medianDays || b.eightiethDays - a.eightiethDays);
}

function viewOf(context: DeskContext): WaitingView {
  const { seesMoney } = context.rights();
  const list = listOf(context);
  return {
    lines: list.lines.map((line) => viewOfLine(line, seesMoney)),
    vehicles: list.vehicles,
    dayCents: seesMoney ? list.dayCents : null,
    sharedCents: seesMoney ? list.sharedCents : null,
    turnaround: turnaroundOf(list, context),
  };
}

export async function readWaiting(context: DeskContext): Answer<ChannelOutput<'waiting:read'>> {
  return ok(viewOf(context));
}

/** The list as a table in a file, in its order. */
export async function exportWaiting(context: DeskContext): Answer<ChannelOutput<'waiting:export'>> {
  return writeExport(context, 'waiting', waitingTable(viewOf(context)));
}
