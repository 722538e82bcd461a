// What a hold strip tells, in words: for screen readers and as the tip.
import type { ReadyDays } from '../../app/contract/views.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import { plural } from '../../app/domain/shared/text.ts';
import { causesInOrder, standingNames } from '../../app/domain/time/cause.ts';
import type { HeldDays } from '../../app/domain/time/held-days.ts';
import { sayWholeDay, sayWholeDaysIn } from './say-day.ts';

export type StripFacts = {
  readonly held: HeldDays;
  readonly boughtOn: Day;
  /** Null also where the person does not see money. */
  readonly breakEvenOn: Day | null;
  readonly ready?: ReadyDays;
  readonly paymentsOn?: readonly Day[];
  readonly today?: Day;
};

/** 'Held 42 days since 20 Jan 2026: transit 4, part 20, idle 18. Now: part, ECU, since 10 Feb 2026, expected on 9 Mar 2026.' */
export function stripLabel({ held, boughtOn, breakEvenOn, ready = null, paymentsOn = [], today }: StripFacts): string {
  const { standing, what, since, expectedOn } = held.now;
  const shares = causesInOrder
    .filter((cause) => (held.byCause[cause] ?? 0) > 0)
    .map((cause) => `${standingNames[cause]} ${held.byCause[cause] ?? 0}`);
  const parts = [
    `Held ${plural(held.heldDays, 'day', 'days')} since ${sayWholeDay(boughtOn)}${shares.length > 0 ? `: ${shares.join(', ')}` : ''}.`,
    standing === 'sold'
      ? `Sold on ${sayWholeDay(since)}.`
      : `Now: ${standingNames[standing]}${what === '' ? '' : `, ${sayWholeDaysIn(what)}`}, since ${sayWholeDay(since)}${expectedOn === null ? '' : `, expected on ${sayWholeDay(expectedOn)}`}.`,
  ];
  if (breakEvenOn !== null) parts.push(`Margin used up after ${sayWholeDay(breakEvenOn)}.`);
  if (ready !== null)
    parts.push(
      `Ready by ${sayWholeDay(ready.likelyOn)} in half of the runs, by ${sayWholeDay(ready.safeOn)} in 80 of 100.`,
    );
  const nextPayment = today === undefined ? undefined : paymentsOn.find((day) => day >= today);
  if (nextPayment !== undefined) parts.push(`Next payment to the lender on ${sayWholeDay(nextPayment)}.`);
  return parts.join(' ');
}
