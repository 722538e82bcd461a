// How long the open codes of one vehicle usually take and when to chase them, for the page. Reads the fleet only; no amounts in it.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { codesUsual } from '../domain/codes/codes-usual.ts';
import { ok } from '../domain/shared/result.ts';
import { amongWhom } from '../domain/time/usual-turnaround.ts';
import { type Answer, type DeskContext, refuse } from './desk-context.ts';

export async function readCodesUsual(
  context: DeskContext,
  { id }: ChannelInput<'codes:usual'>,
): Answer<ChannelOutput<'codes:usual'>> {
  const kept = context.visible(id);
  if (!kept) return refuse('not-found');
  const shop = context.shop();
  const today = context.today();
  const { fewestCases } = shop.turnaround;
  const history = context.forecasts.history(shop, today);
  const found = codesUsual(kept.data.codeRequests, { history, calendar: shop.calendar, fewestCases, today });
  return ok(
    found.map(({ requestId, usual, chase }) => ({
      requestId,
      usual: usual && {
        among: amongWhom(usual.group),
        cases: usual.cases,
        medianDays: usual.medianDays,
        eightiethDays: usual.eightiethDays,
      },
      chase,
    })),
  );
}
