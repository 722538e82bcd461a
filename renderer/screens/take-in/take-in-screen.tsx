// Taking a vehicle in: one compact page, VIN first. Enter goes on, Ctrl+Enter takes it in, then the vehicle opens.
import './take-in.css';
import { type KeyboardEvent, useEffect, useMemo, useRef } from 'react';
import { vehicleTitle } from '../../../app/domain/vehicle/identity.ts';
import { nextStockNumber } from '../../../app/domain/vehicle/next-stock-number.ts';
import { type TakeIn, takeInSchema } from '../../../app/domain/vehicle/take-in.ts';
import { cleanVin } from '../../../app/domain/vehicle/vin.ts';
import { ask } from '../../bridge.ts';
import { takeDesk, useDesk } from '../../state/desk-store.ts';
import { lotStore } from '../../state/lot-store.ts';
import { notify } from '../../state/notice-store.ts';
import { goTo } from '../../state/route-store.ts';
import { useStore } from '../../state/store.ts';
import { useEditDraft } from '../../state/use-edit-draft.ts';
import { takeInText } from '../../text/take-in.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { Form } from '../../ui/form.tsx';
import { ScreenPurpose } from '../../ui/screen-purpose.tsx';
import { SectionHead } from '../../ui/section-head.tsx';
import { VinField } from '../../ui/vin-field.tsx';
import { WholeProblems } from '../../ui/whole-problems.tsx';
import { emptyTakeIn, fieldOfTakeIn, finishTakeIn, type TakeInDraft, yearAfterVin } from './take-in-draft.ts';
import { ArrivalFields, PurchaseFields, WhichFields } from './take-in-fields.tsx';

const draftKey = 'take-in';

async function takeIn(value: TakeIn) {
  const answer = await ask('vehicle:take-in', value);
  if (!answer.ok) {
    const problems = answer.error.problems.map((problem) => ({ ...problem, field: fieldOfTakeIn(problem.field) }));
    return { ok: false, error: { ...answer.error, problems } } as const;
  }
  const { view, desk } = answer.value;
  takeDesk(desk, view.savedAt);
  const { identity, id } = view.vehicle;
  notify('done', takeInText.taken(identity.stockNumber, vehicleTitle(identity)));
  goTo({ screen: 'vehicle', id });
  return answer;
}

function TakeInForm({ vin: scanned }: { readonly vin?: string | undefined }) {
  const desk = useDesk();
  const { rows } = useStore(lotStore);
  const form = useRef<HTMLDivElement>(null);
  const vinInput = useRef<HTMLInputElement>(null);
  const { today } = desk;
  const dealer = desk.shop?.dealer ?? null;
  const currency = dealer?.currency ?? 'USD';
  const market = dealer?.market ?? 'other';
  const suggested = useMemo(() => nextStockNumber(rows.map((row) => row.identity.stockNumber)), [rows]);
  const edit = useEditDraft<TakeIn, TakeInDraft>(draftKey, emptyTakeIn(today, dealer, suggested), {
    schema: takeInSchema,
    finish: (draft) => finishTakeIn({ ...draft, vin: cleanVin(draft.vin) }, today),
    fieldOf: fieldOfTakeIn,
    save: takeIn,
  });
  useEffect(() => vinInput.current?.focus(), []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: filled in once, when it was scanned; then it is the person's.
  useEffect(() => {
    if (scanned !== undefined) edit.set({ vin: scanned, modelYear: yearAfterVin(edit.value, scanned, market) });
  }, [scanned]);
  const { value } = edit;
  const vin = cleanVin(value.vin);
  const other =
    vin === '' ? undefined : rows.find((row) => row.identity.vin === vin && row.held.now.standing !== 'sold');
  const fields = { edit, rows, today, currency, suggestedStockNumber: suggested };
  const save = async () => {
    if (await edit.save()) return;
    requestAnimationFrame(() => form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' || event.defaultPrevented || event.nativeEvent.isComposing) return;
    if (event.ctrlKey || event.metaKey) {
      event.preventDefault();
      void save();
      return;
    }
    if (event.target instanceof HTMLButtonElement) return;
    event.preventDefault();
    // Fields and the button that takes it in, in their order; the small offers under the VIN are passed over.
    const reached = 'input:not([tabindex="-1"]), select, .take-in-foot button';
    const stops = [...(form.current?.querySelectorAll<HTMLElement>(reached) ?? [])];
    const here = stops.indexOf(event.target as HTMLElement);
    stops[here + 1]?.focus();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Enter inside the fields goes to the next one.
    <div ref={form} className="take-in" onKeyDown={onKeyDown}>
      <div className="take-in-title">
        <h1>{takeInText.title}</h1>
        <p className="quiet">{takeInText.keys}</p>
        <Button kind="quiet" onPress={() => goTo({ screen: 'import-list' })}>
          {takeInText.takeInList}
        </Button>
      </div>
      <ScreenPurpose screen="take-in" />
      <Form label={takeInText.title} onSubmit={() => void save()}>
        <SectionHead title={takeInText.which} />
        <div className="take-in-vin">
          <div className="field-grid take-in-vin-field">
            <VinField
              {...edit.at('vin')}
              onChange={(typed) => edit.set({ vin: typed, modelYear: yearAfterVin(value, typed, market) })}
              reason={value.vinReason}
              onReasonChange={(vinReason) => edit.set({ vinReason })}
              reasonProblem={edit.problemAt('vinReason')}
              market={market}
              taken={other === undefined ? '' : takeInText.vinTaken(other.identity.stockNumber)}
              modelYear={value.modelYear}
              onModelYear={(modelYear) => edit.set({ modelYear })}
              inputRef={vinInput}
            />
          </div>
          {other !== undefined && (
            <Button onPress={() => goTo({ screen: 'vehicle', id: other.id })}>
              {takeInText.openOther(other.identity.stockNumber)}
            </Button>
          )}
        </div>
        <WhichFields {...fields} />
        <SectionHead title={takeInText.purchase} />
        <PurchaseFields {...fields} />
        <SectionHead title={takeInText.comes} />
        <ArrivalFields {...fields} />
        <WholeProblems sentences={edit.wholeProblems} />
        <div className="take-in-foot">
          <Button kind="main" type="submit" isDisabled={edit.isSaving} shortcut="Ctrl+Enter">
            {takeInText.takeIn}
          </Button>
          {edit.isTouched && (
            <Button
              onPress={() => {
                edit.putBack();
                vinInput.current?.focus();
              }}
            >
              {takeInText.startAgain}
            </Button>
          )}
        </div>
      </Form>
    </div>
  );
}

export function TakeInScreen({ vin }: { readonly vin?: string }) {
  const desk = useDesk();
  if (desk.readOnlyReason !== null) return <EmptyState sentence={takeInText.readOnly} />;
  if (desk.person.role !== 'manager') return <EmptyState sentence={takeInText.onlyManager} />;
  return <TakeInForm vin={vin} />;
}
