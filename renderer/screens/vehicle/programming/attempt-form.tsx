// Doing a step: by which route, how it went, the VIN where nothing can be undone, why somebody goes on regardless, and what was seen.
import {
  type AttemptDraft,
  attemptDraftSchema,
  attemptOutcomeSchema,
} from '../../../../app/domain/programming/attempt.ts';
import type { StepProgress } from '../../../../app/domain/programming/job-progress.ts';
import type { ProgrammingRoute } from '../../../../app/domain/programming/programming-route.ts';
import type { RouteOffer } from '../../../../app/domain/programming/routes.ts';
import { checkOverride } from '../../../../app/domain/programming/start-step.ts';
import { fail, ok } from '../../../../app/domain/shared/result.ts';
import { cleanVin } from '../../../../app/domain/vehicle/vin.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { jobText, routeWords } from '../../../text/programming.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { peopleChoices } from '../ledger/choices.ts';
import { FactForm } from '../ledger/fact-form.tsx';
import { asTyped, type FactKind } from '../ledger/fact-kind.ts';
import { FieldPlace } from '../ledger/field-place.tsx';
import type { OpenEntry } from '../ledger/open-entries.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { BigChoice } from './big-choice.tsx';
import { asksVolts } from './step-actions.ts';
import { SupportWarnings } from './support-warnings.tsx';

type AttemptValue = Typed<AttemptDraft> & { readonly id: string };

/** The reason to go on regardless is judged before it is asked for; everything else is the main process's to judge. */
function finishAttempt(value: AttemptValue) {
  const attempt = { ...value, vinRead: cleanVin(value.vinRead) };
  if (value.override === null) return ok(attempt);
  const checked = checkOverride(value.override);
  if (checked.ok) return ok({ ...attempt, override: checked.value });
  const field = checked.error.code === 'override-unnamed' ? 'override.by' : 'override.reason';
  return fail([{ field, sentence: checked.error.sentence }]);
}

const attemptKind: FactKind<AttemptDraft> = {
  list: 'attempts',
  schema: attemptDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'attempts', item }),
  toValue: asTyped,
  finish: finishAttempt,
};

function Regardless({ edit, progress }: { readonly edit: Editing<AttemptValue>; readonly progress: StepProgress }) {
  const { desk } = useVehicle();
  const { override } = edit.value;
  if (override === null) return null;
  return (
    <fieldset className="field-group regardless">
      <legend>{jobText.blockedTitle}</legend>
      <ul className="step-reasons">
        {progress.reasons.map(({ what, sentence }) => (
          <li key={what}>{sentence}</li>
        ))}
      </ul>
      <div className="field-grid">
        <SelectField
          label={jobText.overrideBy}
          value={override.by}
          onChange={(by) => edit.set({ override: { ...override, by } })}
          problem={edit.problemAt('override.by')}
          options={peopleChoices(desk, override.by)}
        />
        <TextField
          label={jobText.overrideReason}
          value={override.reason}
          onChange={(reason) => edit.set({ override: { ...override, reason } })}
          problem={edit.problemAt('override.reason') ?? edit.problemAt('override')}
          isRequired
          isWide
        />
      </div>
    </fieldset>
  );
}

export type AttemptFormProps = {
  readonly attempt: AttemptDraft;
  readonly progress: StepProgress;
  /** The routes in the order to offer them; null while the shop's history is read, and for a step of no module. */
  readonly offer: RouteOffer | null;
  readonly entry: OpenEntry;
  readonly onClosed: () => void;
};

function routeOptions(routes: readonly ProgrammingRoute[], offer: RouteOffer | null) {
  const sentences = new Map(offer?.routes.map(({ route, sentence }) => [route, sentence.replace(/^[^:]*: /, '')]));
  // Before anything has failed the rules' own order stands: a bench may promise more and still be the wrong place to begin.
  const hasFailed = offer?.routes.some(({ failedHere }) => failedHere) ?? false;
  const inOrder = hasFailed && offer !== null ? offer.routes.map(({ route }) => route) : routes;
  return inOrder.map((route) => {
    const detail = sentences.get(route);
    return { value: route, label: routeWords[route], ...(detail === undefined ? {} : { detail }) };
  });
}

export function AttemptForm({ attempt, progress, offer, entry, onClosed }: AttemptFormProps) {
  const { desk, today } = useVehicle();
  const { step } = progress;
  const volts = { decimals: 2, maximum: 60, unit: 'V' } as const;
  const outcomes = attemptOutcomeSchema.options.map((value) => ({ value, label: jobText.outcomes[value] }));
  return (
    <FactForm kind={attemptKind} fact={attempt} name={step.title} entry={entry} onSaved={onClosed} onClosed={onClosed}>
      {(edit) => (
        <>
          <Regardless edit={edit} progress={progress} />
          {step.routes.length > 1 && (
            <BigChoice label={jobText.route} {...edit.at('route')} options={routeOptions(step.routes, offer)} />
          )}
          <BigChoice label={jobText.outcome} {...edit.at('outcome')} options={outcomes} />
          <div className="field-grid">
            {step.cannotBeUndone && (
              <FieldPlace name="vinRead">
                <TextField
                  label={jobText.vinRead}
                  {...edit.at('vinRead')}
                  hint={jobText.vinHint}
                  isRequired
                  isWide
                  code
                />
              </FieldPlace>
            )}
            {asksVolts(step) && (
              <>
                <NumberField label={jobText.voltsBefore} {...edit.at('voltsBefore')} {...volts} />
                <NumberField label={jobText.voltsLowest} {...edit.at('voltsLowest')} {...volts} />
                <NumberField label={jobText.voltsAfter} {...edit.at('voltsAfter')} {...volts} />
                <SupportWarnings
                  before={edit.value.voltsBefore}
                  lowest={edit.value.voltsLowest}
                  after={edit.value.voltsAfter}
                />
              </>
            )}
            <SelectField
              label={jobText.person}
              {...edit.at('person')}
              options={peopleChoices(desk, edit.value.person)}
            />
            <DayField label={jobText.on} {...edit.at('on')} today={today} isRequired />
            <TextField label={jobText.message} {...edit.at('message')} isWide />
            <TextField label={jobText.evidence} {...edit.at('evidence')} isWide />
          </div>
        </>
      )}
    </FactForm>
  );
}
