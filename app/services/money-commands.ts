// Money for the page: the fleet's figures, how earlier forecasts did, and tables written as files into the fleet's own folder.
import { mkdir } from 'node:fs/promises';
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { type MoneyOverview, moneyOverview } from '../domain/fleet/money-overview.ts';
import { ok } from '../domain/shared/result.ts';
import { type BackTest, backTest } from '../domain/time/back-test.ts';
import type { TurnaroundHistory } from '../domain/time/turnaround.ts';
import { turnaroundSummary } from '../domain/time/turnaround.ts';
import { providerGroups } from '../domain/time/turnaround-cases.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { Answer, DeskContext } from './desk-context.ts';
import type { FleetDesk } from './fleet-desk.ts';
import { moneyTable } from './money-tables.ts';
import { exportsFolder, writeExport } from './write-export.ts';

/** Whom the shop waits for. */
const outsideKinds = ['arrival', 'part', 'code', 'sublet', 'paper'] as const;
/** The figure is about the forecasts of late; it would take long over years of sales. */
const testedVehicles = 120;
const slowestShown = 12;
const fewestShown = 3;

/** The history knows whom the shop waited for by folded names; people know them as they wrote them. */
function providerNames(vehicles: readonly Vehicle[]): ReadonlyMap<string, string> {
  const names = vehicles.flatMap(({ purchase, parts, codeRequests, sublets }) => [
    purchase.source,
    ...parts.map(({ supplier }) => supplier),
    ...codeRequests.map(({ askedOf }) => askedOf),
    ...sublets.map(({ supplier }) => supplier),
  ]);
  return new Map(names.flatMap((name) => providerGroups(name).map((group) => [group, name.trim()])));
}

const tests = new WeakMap<TurnaroundHistory, BackTest>();

/** The figures of the fleet, for the page, for tables and for the sheet of them. */
export function overviewOf(context: FleetDesk): MoneyOverview {
  const shop = context.shop();
  const today = context.today();
  const vehicles = [...context.store.vehicles().values()].map(({ data: vehicle }) => {
    const reckoning = context.reckon(vehicle);
    const forecast = context.forecasts.forecast(vehicle, shop, today);
    return { vehicle, reckoning, prospect: context.prospect(vehicle, reckoning, forecast) };
  });
  const summary = turnaroundSummary(context.forecasts.history(shop, today), outsideKinds, today);
  const names = providerNames(vehicles.map(({ vehicle }) => vehicle));
  const slowest = summary
    .flatMap((one) => {
      const name = names.get(one.group);
      return name === undefined || one.cases < fewestShown ? [] : [{ ...one, group: name }];
    })
    .slice(0, slowestShown);
  return moneyOverview(vehicles, shop, { today, slowest });
}

/** Of the vehicles sold last; kept as long as the history is. */
function backTestOf(context: DeskContext): BackTest {
  const shop = context.shop();
  const history = context.forecasts.history(shop, context.today());
  const kept = tests.get(history);
  if (kept) return kept;
  const sold = [...context.store.vehicles().values()]
    .map(({ data }) => data)
    .filter(({ sale }) => sale !== null)
    .sort((a, b) => ((a.sale?.soldOn ?? '') < (b.sale?.soldOn ?? '') ? 1 : -1))
    .slice(0, testedVehicles);
  const { checklist, turnaround: settings, calendar } = shop;
  const made = backTest(sold, { checklist, settings, calendar });
  tests.set(history, made);
  return made;
}

export async function readMoney(context: DeskContext): Answer<ChannelOutput<'money:read'>> {
  const { cases, ...figures } = backTestOf(context);
  return ok({ overview: overviewOf(context), backTest: { ...figures, cases: cases.length } });
}

/** Writes one table. The name is made here; the page names only which table. An earlier file of the day is replaced. */
export async function exportMoney(
  context: DeskContext,
  input: ChannelInput<'money:export'>,
): Answer<ChannelOutput<'money:export'>> {
  return writeExport(context, input.table, moneyTable(input.table, overviewOf(context)));
}

export async function showExports(context: DeskContext): Answer<ChannelOutput<'money:show-folder'>> {
  const folder = exportsFolder(context);
  await mkdir(folder, { recursive: true });
  context.deps.outside.showFolder(folder);
  return ok({});
}
