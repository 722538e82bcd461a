// One check of the shop's list on this vehicle: its latest signature, why it counts no more, and the ways to sign it.
import { useRef } from 'react';
import type { Check } from '../../../../app/domain/fleet/shop.ts';
import { currentSignOff } from '../../../../app/domain/readiness/proof-gates.ts';
import { type SignOffDraft, signOffDraftSchema } from '../../../../app/domain/readiness/sign-off.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { notify } from '../../../state/notice-store.ts';
import { seedDraft } from '../../../state/use-edit-draft.ts';
import { roleNames } from '../../../text/common.ts';
import { errorSentence } from '../../../text/errors.ts';
import { sayDay, sayDaysIn } from '../../../text/say-day.ts';
import { checkText } from '../../../text/vehicle-work.ts';
import { Button } from '../../../ui/button.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { chooseFrom, peopleChoices, personName } from '../ledger/choices.ts';
import { draftKey, FactForm } from '../ledger/fact-form.tsx';
import { asTyped, type FactKind, withoutStamp } from '../ledger/fact-kind.ts';
import { FieldPlace } from '../ledger/field-place.tsx';
import { closeEntry, openEntry, useOpenEntry } from '../ledger/open-entries.ts';
import { useVehicle } from '../page/vehicle-context.ts';

const signOffKind: FactKind<SignOffDraft> = {
  list: 'signOffs',
  schema: signOffDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'signOffs', item }),
  toValue: asTyped,
};

const results = ['passed', 'failed', 'not-needed'] as const;

export function CheckRow({ check }: { readonly check: Check }) {
  const state = useVehicle();
  const { vehicle, view, desk, today } = state;
  const place = `${state.id}/signOffs/${check.id}`;
  const entry = useOpenEntry(place);
  const row = useRef<HTMLTableRowElement>(null);
  const signOff = currentSignOff(vehicle, check.id);
  const gate = view.readiness.gates.find((candidate) => candidate.key === `check:${check.id}`);
  const isHolding = vehicle.sale === null && (gate?.state === 'open' || gate?.state === 'stale');
  const canSign = state.canPut('signOffs');
  const fresh = (id: string, result: SignOffDraft['result']): SignOffDraft => ({
    id,
    checkId: check.id,
    signedOn: today,
    signedBy: desk.person.id,
    result,
    note: '',
  });
  const focusRow = () => requestAnimationFrame(() => row.current?.querySelector<HTMLElement>('button')?.focus());
  const close = () => {
    closeEntry(place);
    focusRow();
  };
  const sign = async () => {
    const answer = await state.change(signOffKind.toChange(fresh(newIdentifier(), 'passed')));
    if (answer.ok) focusRow();
    else notify('problem', errorSentence(answer.error));
  };
  const open = (result: SignOffDraft['result']) => {
    const id = newIdentifier();
    seedDraft(draftKey(state.id, 'signOffs', id), { result });
    openEntry(place, id, { isNew: true, focusOn: 'note' });
  };
  const kept = vehicle.signOffs.find((candidate) => candidate.id === entry?.id);
  const words =
    signOff === null
      ? checkText.notSigned
      : checkText.signed(
          checkText.results[signOff.result],
          sayDay(signOff.signedOn, today),
          personName(desk, signOff.signedBy),
        );
  return (
    <>
      <tr ref={row} className={`ledger-row${isHolding ? ' is-holding' : ' is-done'}`} data-fact={check.id}>
        <td>{check.title}</td>
        <td className="is-tight">{roleNames[check.who]}</td>
        <td>
          {words}
          {signOff !== null && signOff.note !== '' && <span className="quiet"> {signOff.note}</span>}
          {gate?.state === 'stale' && <div className="is-stale">{sayDaysIn(gate.items[0]?.text ?? '', today)}</div>}
        </td>
        <td className="ledger-actions">
          {canSign &&
            entry === null &&
            (isHolding ? (
              <>
                <Button label={`${checkText.quick.passed}: ${check.title}`} onPress={() => void sign()}>
                  {checkText.quick.passed}
                </Button>
                <Button kind="quiet" label={`${checkText.quick.failed}: ${check.title}`} onPress={() => open('failed')}>
                  {checkText.quick.failed}
                </Button>
                <Button
                  kind="quiet"
                  label={`${checkText.quick['not-needed']}: ${check.title}`}
                  onPress={() => open('not-needed')}
                >
                  {checkText.quick['not-needed']}
                </Button>
              </>
            ) : (
              signOff !== null && (
                <Button
                  kind="quiet"
                  label={`${checkText.correct}: ${check.title}`}
                  onPress={() => openEntry(place, signOff.id)}
                >
                  {checkText.correct}
                </Button>
              )
            ))}
        </td>
      </tr>
      {entry !== null && canSign && (
        <tr className="ledger-form-row">
          <td colSpan={4}>
            <FactForm
              key={entry.id}
              kind={signOffKind}
              fact={kept === undefined ? fresh(entry.id, 'passed') : withoutStamp<SignOffDraft>(kept)}
              name={check.title}
              entry={entry}
              onSaved={close}
              onClosed={close}
            >
              {(edit) => (
                <div className="field-grid">
                  <SelectField
                    label={checkText.result}
                    {...edit.at('result')}
                    options={chooseFrom(results, checkText.resultOptions)}
                  />
                  <DayField label={checkText.signedOn} {...edit.at('signedOn')} today={today} isRequired />
                  <SelectField
                    label={checkText.signedBy}
                    {...edit.at('signedBy')}
                    options={peopleChoices(desk, edit.value.signedBy)}
                  />
                  <FieldPlace name="note">
                    <TextField label={checkText.note} {...edit.at('note')} />
                  </FieldPlace>
                </div>
              )}
            </FactForm>
          </td>
        </tr>
      )}
    </>
  );
}
