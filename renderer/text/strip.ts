// What a hold strip tells, in words: for screen readers and as the tip.
import type { ReadyDays } from '../../app/contract/views.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import { plural } from '../../app/domain/shared/text.ts';
import { causesInOrder, standingNames } from '../../app/domain/time/cause.ts';
import type { HeldDays } from '../../app/domain/time/held-days.ts';

export type StripFacts = {
  readonly held: HeldDays;
  readonly boughtOn: Day;
  /** Null also where the person does not see money. */
  readonly breakEvenOn: Day | null;
  readonly ready?: ReadyDays;
  readonly paymentsOn?: readonly Day[];
  readonly today?: Day;
};

/** 'Held 42 days since 2026-01-20: transit 4, part 20, idle 18. Now: part, ECU, since 2026-02-10, expected on 2026-03-09.' */
export function stripLabel({ held, boughtOn, breakEvenOn, ready = null, paymentsOn = [], today }: StripFacts): string {
  const { standing, what, since, expectedOn } = held.now;
  const shares = causesInOrder
    .filter((cause) => (held.byCause[cause] ?? 0) > 0)
    .map((cause) => `${standingNames[cause]} ${held.byCause[cause] ?? 0}`);
  const parts = [
    `Held ${plural(held.heldDays, 'day', 'days')} since ${boughtOn}${shares.length > 0 ? `: ${shares.join(', ')}` : ''}.`,
    standing === 'sold'
      ? `Sold on ${since}.`
      : `Now: ${standingNames[standing]}${what === '' ? '' : `, ${what}`}, since ${since}${expectedOn === null ? '' : `, expected on ${expectedOn}`}.`,
  ];
  if (breakEvenOn !== null) parts.push(`Margin used up after ${breakEvenOn}.`);
  if (ready !== null) parts.push(`Ready by ${ready.likelyOn} in half of the runs, by ${ready.safeOn} in 80 of 100.`);
  const nextPayment = today === undefined ? undefined : paymentsOn.find((day) => day >= today);
  if (nextPayment !== undefined) parts.push(`Next payment to the lender on ${nextPayment}.`);
  return parts.join(' ');
}
