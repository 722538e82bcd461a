// The time within which some schemes want a form filed about a code that was given. Reminds; files nothing.
import { z } from 'zod';
import { addDays, type Day, daysBetween } from '../shared/day.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, plural } from '../shared/text.ts';
import type { RequestFacts } from './request-facts.ts';

export const filingRuleSchema = z.strictObject({
  id: identifierSchema,
  name: filledLineSchema(80),
  /** Calendar days after the day of the transaction, which is day 0. */
  withinDays: z.int().min(0).max(365),
  /** What happens otherwise. */
  otherwise: filledLineSchema(120),
  source: filledLineSchema(160),
});
export type FilingRule = z.infer<typeof filingRuleSchema>;

export const filingRulesSchema = z.array(filingRuleSchema).max(12);

/** Editable. Whether the five days are calendar or working days is not said in the source; calendar days are the safe reading. */
export const shippedFilingRules: readonly FilingRule[] = [
  {
    id: 'us-secure-data-release',
    name: 'Secure data release, United States (form D-1)',
    withinDays: 5,
    otherwise: 'the account is locked',
    source: 'NASTF Secure Data Release Model: a D-1 for every security transaction within 5 days',
  },
];

export type FilingReminder = {
  readonly dueOn: Day;
  /** Negative when it is late. */
  readonly daysLeft: number;
  readonly sentence: string;
};

/**
 * Until when the form must be filed, for a request under such a scheme whose transaction has happened and which is not filed yet; else
 * null. The transaction is the day written down for it, or else the day the code was given.
 */
export function filingReminder(
  request: Pick<RequestFacts, 'filing' | 'answeredOn' | 'outcome'>,
  rules: readonly FilingRule[],
  today: Day,
): FilingReminder | null {
  const { filing } = request;
  const rule = rules.find((candidate) => candidate.id === filing?.schemeId);
  if (filing === null || filing.filedOn !== null || !rule) return null;
  const happenedOn = filing.transactionOn ?? (request.outcome === 'given' ? request.answeredOn : null);
  if (happenedOn === null) return null;
  const dueOn = addDays(happenedOn, rule.withinDays);
  const daysLeft = daysBetween(today, dueOn);
  const when =
    daysLeft < 0
      ? `was due on ${dueOn}, ${plural(-daysLeft, 'day', 'days')} ago`
      : daysLeft === 0
        ? 'is due today'
        : `is due on ${dueOn}, in ${plural(daysLeft, 'day', 'days')}`;
  return { dueOn, daysLeft, sentence: `${rule.name}: the form ${when}. Otherwise ${rule.otherwise}.` };
}
