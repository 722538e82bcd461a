// The shop's own notebook: earlier cases like the one at hand, from this fleet alone. Who may not see money gets no amounts.
import type { CaseSummary } from '../contract/case-summary.ts';
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { similarCases } from '../domain/fleet/similar-cases.ts';
import { ok } from '../domain/shared/result.ts';
import type { Answer, DeskContext } from './desk-context.ts';

const mostCases = 6;
const mostFixes = 5;

export async function findCases(
  context: DeskContext,
  input: ChannelInput<'cases:find'>,
): Answer<ChannelOutput<'cases:find'>> {
  const vehicles = [...context.store.vehicles().values()].map((kept) => kept.data);
  const { rates, people } = context.shop();
  const found = similarCases(vehicles, input, { rates, people });
  const { seesMoney } = context.rights();
  const amount = (cents: number) => (seesMoney ? cents : null);
  const closest = found.cases.filter((one) => one.match === found.match);
  const summary: CaseSummary = {
    match: found.match,
    count: closest.length,
    fixes: found.fixes
      .slice(0, mostFixes)
      .map(({ fix, count, medianCents, medianDays }) => ({ fix, count, medianCents: amount(medianCents), medianDays })),
    routes: found.routes,
    leftAsTheyWere: found.leftAsTheyWere,
    cases: closest.slice(0, mostCases).map(({ vehicleId, stockNumber, title, what, fix, days, doneOn, costs }) => ({
      vehicleId,
      stockNumber,
      title,
      what,
      fix,
      days,
      doneOn,
      totalCents: amount(costs.totalCents),
      isIncomplete: costs.isIncomplete,
    })),
  };
  return ok(summary);
}
