// A hold strip as sheets carry it: runs of days with their look, what lies ahead, and everything it tells in words. Draws nothing.
import { z } from 'zod';
import { addDays, compareDays, type Day, daySchema, daysBetween, laterDay } from '../shared/day.ts';
import { type DayForm, dayFormSchema, showDay, showDaysIn } from '../shared/show-day.ts';
import { plural } from '../shared/text.ts';
import { causeSchema, causesInOrder, standingMeanings, standingNames } from '../time/cause.ts';
import { causeLooks, okabeIto } from '../time/cause-look.ts';
import type { HeldDays } from '../time/held-days.ts';

const dayOrNull = daySchema.nullable();

/** First and last day shown, both whole, the day the sheet was made on, and how a month that needs its year is written. */
export const stripAxisSchema = z.strictObject({
  from: daySchema,
  to: daySchema,
  today: daySchema,
  dayForm: dayFormSchema,
});
export type StripAxis = z.infer<typeof stripAxisSchema>;

export const stripOfDaysSchema = z.strictObject({
  boughtOn: daySchema,
  stretches: z.array(z.strictObject({ cause: causeSchema, from: daySchema, days: z.int().min(1) })).readonly(),
  soldOn: dayOrNull,
  /** Drawn hollow up to here: likely ready, or promised where nothing better is known. */
  likelyOn: dayOrNull,
  safeOn: dayOrNull,
  /** The day on which the margin is used up; null also where whoever prints may not know it. */
  breakEvenOn: dayOrNull,
  /** Everything the picture tells. */
  alternateText: z.string().max(4000),
});
export type StripOfDays = z.infer<typeof stripOfDaysSchema>;

export type StripLook = {
  readonly colour: string;
  readonly hatch: (typeof causeLooks)[keyof typeof causeLooks]['hatch'];
  /** The one dark colour of the set takes light lines, all others dark ones. */
  readonly hasLightLines: boolean;
};

export function stripLookOf(cause: keyof typeof causeLooks): StripLook {
  const { colour, hatch } = causeLooks[cause];
  return { colour, hatch, hasLightLines: colour === okabeIto.blue };
}

export type StripFacts = {
  readonly boughtOn: Day;
  readonly held: HeldDays;
  readonly ready: { readonly likelyOn: Day; readonly safeOn: Day } | null;
  readonly breakEvenOn: Day | null;
};

function alternateText({ boughtOn, held, ready, breakEvenOn }: StripFacts, dayForm: DayForm): string {
  const { standing, what, since, expectedOn } = held.now;
  const shares = causesInOrder.flatMap((cause) => {
    const days = held.byCause[cause] ?? 0;
    return days > 0 ? [`${standingNames[cause]} ${days}`] : [];
  });
  const now =
    standing === 'sold'
      ? `Sold on ${showDay(since, dayForm)}.`
      : `Now: ${standingNames[standing]}${what === '' ? '' : `, ${showDaysIn(what, dayForm)}`}, since ${showDay(since, dayForm)}${expectedOn === null ? '' : `, expected on ${showDay(expectedOn, dayForm)}`}.`;
  return [
    `Hold strip. Held ${plural(held.heldDays, 'day', 'days')} since ${showDay(boughtOn, dayForm)}${shares.length === 0 ? '' : `: ${shares.join(', ')}`}.`,
    now,
    ...(ready === null
      ? []
      : [
          `Ready by ${showDay(ready.likelyOn, dayForm)} in half of the runs, by ${showDay(ready.safeOn, dayForm)} in 80 of 100.`,
        ]),
    ...(breakEvenOn === null ? [] : [`Margin used up after ${showDay(breakEvenOn, dayForm)}.`]),
  ].join(' ');
}

/** The strip of a vehicle from its reckoning; its days told in this form. */
export function stripOfDays(facts: StripFacts, dayForm: DayForm): StripOfDays {
  const { boughtOn, held, ready, breakEvenOn } = facts;
  const isSold = held.now.standing === 'sold';
  return {
    boughtOn,
    stretches: held.stretches.map(({ cause, from, days }) => ({ cause, from, days })),
    soldOn: isSold ? held.now.since : null,
    likelyOn: isSold ? null : (ready?.likelyOn ?? held.now.expectedOn),
    safeOn: isSold ? null : (ready?.safeOn ?? null),
    breakEvenOn,
    alternateText: alternateText(facts, dayForm),
  };
}

const longestBack = 140;
const longestAhead = 60;
const leastAhead = 14;

/**
 * One axis for all of these strips: from the earliest purchase, but no further back than 140 days, to the last day they mark, but no
 * further ahead than 60. Days that lie before it are counted at the strip's beginning (no source; what is still legible on paper).
 */
export function stripAxis(strips: readonly StripOfDays[], today: Day, dayForm: DayForm): StripAxis {
  let from = addDays(today, -28);
  let to = addDays(today, leastAhead);
  for (const strip of strips) {
    if (compareDays(strip.boughtOn, from) < 0) from = strip.boughtOn;
    for (const day of [strip.likelyOn, strip.safeOn, strip.breakEvenOn]) if (day !== null) to = laterDay(to, day);
  }
  const earliest = addDays(today, -longestBack);
  const latest = addDays(today, longestAhead);
  return { from: laterDay(from, earliest), to: compareDays(to, latest) > 0 ? latest : to, today, dayForm };
}

/** How many days of the strip lie before the axis begins. */
export function daysBeforeAxis({ boughtOn, stretches }: StripOfDays, { from }: StripAxis): number {
  const held = stretches.reduce((sum, { days }) => sum + days, 0);
  return Math.min(held, Math.max(0, daysBetween(boughtOn, from)));
}

export const legendWords = {
  causes: causesInOrder.map((cause) => ({ cause, name: standingNames[cause], meaning: standingMeanings[cause] })),
  forecast: 'hollow: until likely ready; finely dotted: until ready in 80 of 100 runs',
  today: 'line: today',
  breakEven: 'triangle: margin used up after this day',
  before: '‹ days before the axis begins',
} as const;
