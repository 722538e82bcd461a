// Whether a step may be started now by this person: its blocks, a named override, and the VIN for what cannot be undone. Records nothing.
import { fail, ok, type Result } from '../shared/result.ts';
import type { Override } from './attempt.ts';
import type { KeptStep } from './kept-plan.ts';
import type { StepReadiness } from './plan-gates.ts';
import { checkVinTail } from './vin-tail.ts';

export type StartRefusal = {
  readonly code:
    | 'already-done'
    | 'left-out'
    | 'blocked'
    | 'never-overridden'
    | 'override-unnamed'
    | 'override-without-reason'
    | 'vin';
  readonly sentence: string;
};

/** Shorter than this nobody can see later why it was done ('ok', 'rush'). Common practice, no source. */
const shortestReason = 10;

/** An override needs a name and a reason in words. */
export function checkOverride({ by, reason }: Override): Result<Override, StartRefusal> {
  if (by.trim() === '')
    return fail({ code: 'override-unnamed', sentence: 'Say who goes on regardless: an override needs a name.' });
  const written = reason.trim().replace(/\s+/g, ' ');
  if (written.length < shortestReason || !/\p{L}{2}/u.test(written))
    return fail({
      code: 'override-without-reason',
      sentence: 'Write why you go on regardless, in a few words that somebody else will understand later.',
    });
  return ok({ by: by.trim(), reason: written });
}

export type StartRequest = {
  readonly step: KeptStep;
  readonly readiness: StepReadiness;
  readonly override: Override | null;
  readonly vinOnRecord: string;
  /** The last eight as read from the vehicle; asked only for a step that cannot be undone. */
  readonly vinTyped: string;
};

/** Null when nothing blocks, or the override is good; what nobody may go past is refused first. */
function refuseBlocked(readiness: StepReadiness, override: Override | null): StartRefusal | null {
  const [firm] = readiness.reasons.filter(({ mayBeOverridden }) => !mayBeOverridden);
  if (firm) return { code: 'never-overridden', sentence: `${firm.sentence} Nobody can go past this.` };
  if (override === null)
    return { code: 'blocked', sentence: readiness.reasons.map(({ sentence }) => sentence).join(' ') };
  const checked = checkOverride(override);
  return checked.ok ? null : checked.error;
}

/**
 * Gives the override to record, null where none was needed, or the refusal. No override goes past high voltage, the airbag wait, missing
 * proof of ownership, or a VIN that does not match.
 */
export function mayStart({
  step,
  readiness,
  override,
  vinOnRecord,
  vinTyped,
}: StartRequest): Result<Override | null, StartRefusal> {
  if (readiness.state === 'done') return fail({ code: 'already-done', sentence: `“${step.title}” is already done.` });
  if (readiness.state === 'left-out')
    return fail({ code: 'left-out', sentence: `“${step.title}” was left out. Take it up again first.` });
  if (readiness.state === 'blocked') {
    const refusal = refuseBlocked(readiness, override);
    if (refusal) return fail(refusal);
  }
  if (step.cannotBeUndone) {
    const vin = checkVinTail(vinOnRecord, vinTyped);
    if (!vin.ok) return fail({ code: 'vin', sentence: vin.error.sentence });
  }
  if (readiness.state !== 'blocked' || override === null) return ok(null);
  return checkOverride(override);
}
