// Work given to somebody else.
import { promisedFor } from '../../../../app/domain/codes/request-life.ts';
import { showCents } from '../../../../app/domain/shared/cents.ts';
import { type Day, daysBetween } from '../../../../app/domain/shared/day.ts';
import { type SubletDraft, subletDraftSchema } from '../../../../app/domain/work/sublet.ts';
import { workAreaSchema } from '../../../../app/domain/work/work-area.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { sayDay } from '../../../text/say-day.ts';
import { areaNames, partText, sectionNames } from '../../../text/vehicle-entries.ts';
import { subletText } from '../../../text/vehicle-work.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { MoneyField } from '../../../ui/money-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { freshSublet } from '../fresh-facts.ts';
import { ChaseList } from '../ledger/chase-list.tsx';
import { chooseFrom, usedWords } from '../ledger/choices.ts';
import { asTyped, type FactKind } from '../ledger/fact-kind.ts';
import { FaultField } from '../ledger/fault-field.tsx';
import { FieldPlace } from '../ledger/field-place.tsx';
import { Ledger } from '../ledger/ledger.tsx';
import { nextSubletFact, withSubletFact } from '../next-facts.ts';
import { useVehicle } from '../page/vehicle-context.ts';

const subletKind: FactKind<SubletDraft> = {
  list: 'sublets',
  schema: subletDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'sublets', item }),
  toValue: asTyped,
};

function subletState(sublet: SubletDraft, today: Day): string {
  const words = subletText.states;
  if (sublet.backOn !== null) return words.back(sayDay(sublet.backOn, today));
  if (sublet.sentOn === null) return words.toSend;
  const sent = words.sent(sayDay(sublet.sentOn, today));
  const promisedOn = promisedFor(sublet);
  if (promisedOn === null) return `${sent}, ${partText.states.noPromise}`;
  const late = daysBetween(promisedOn, today);
  const expected = partText.states.expected(sayDay(promisedOn, today));
  return `${sent}, ${expected}${late > 0 ? `, ${partText.states.late(late)}` : ''}`;
}

function SubletForm({ edit }: { readonly edit: Editing<Typed<SubletDraft>> }) {
  const { vehicle, today, currency } = useVehicle();
  const suppliers = usedWords([...vehicle.sublets, ...vehicle.parts].map((entry) => entry.supplier));
  return (
    <>
      <div className="field-grid">
        <TextField label={subletText.what} {...edit.at('what')} isRequired />
        <TextField label={subletText.supplier} {...edit.at('supplier')} list={suppliers} />
        <SelectField
          label={subletText.area}
          {...edit.at('area')}
          options={chooseFrom(workAreaSchema.options, areaNames)}
        />
        <FaultField label={subletText.fault} {...edit.at('faultId')} />
        <DayField label={subletText.notedOn} {...edit.at('notedOn')} today={today} isRequired />
        <FieldPlace name="sentOn">
          <DayField label={subletText.sentOn} {...edit.at('sentOn')} today={today} />
        </FieldPlace>
        <FieldPlace name="expectedOn">
          <DayField label={subletText.expectedOn} {...edit.at('expectedOn')} today={today} />
        </FieldPlace>
        <FieldPlace name="backOn">
          <DayField label={subletText.backOn} {...edit.at('backOn')} today={today} />
        </FieldPlace>
        <MoneyField label={subletText.quoted} {...edit.centsAt('quotedCents')} currency={currency} />
        <FieldPlace name="invoicedCents">
          <MoneyField label={subletText.invoiced} {...edit.centsAt('invoicedCents')} currency={currency} />
        </FieldPlace>
        <TextField label={subletText.note} {...edit.at('note')} isWide />
      </div>
      <ChaseList chases={edit.value.chases} onChange={(chases) => edit.set({ chases })} />
    </>
  );
}

export function SubletSection() {
  const { vehicle, view, today } = useVehicle();
  const sublets = vehicle.sublets.toSorted((a, b) => Number(a.backOn !== null) - Number(b.backOn !== null));
  return (
    <Ledger
      section="sublet"
      title={sectionNames.sublet}
      kind={subletKind}
      facts={sublets}
      nameOf={(sublet) => sublet.what}
      addLabel={subletText.add}
      emptySentence={subletText.empty}
      makeNew={(id) => freshSublet(id, today)}
      isDone={(sublet) => sublet.backOn !== null}
      columns={[
        { title: subletText.what, cell: (sublet) => sublet.what },
        { title: subletText.supplier, cell: (sublet) => sublet.supplier },
        { title: subletText.state, cell: (sublet) => subletState(sublet, today) },
        { title: subletText.note, cell: (sublet) => <span className="quiet">{sublet.note}</span> },
        ...(view.costs === null
          ? []
          : [
              {
                title: subletText.amount,
                align: 'right' as const,
                cell: (sublet: SubletDraft) => {
                  const cents = sublet.invoicedCents ?? sublet.quotedCents;
                  return cents === null ? '–' : showCents(cents);
                },
              },
            ]),
      ]}
      quickActions={(sublet) => {
        const next = nextSubletFact(sublet);
        if (next === null) return [];
        const worthAdding = next === 'sent' ? sublet.expectedOn === null : sublet.invoicedCents === null;
        const thenFocus = next === 'sent' ? 'expectedOn' : 'invoicedCents';
        return [
          {
            label: subletText.quick[next],
            apply: (fact) => withSubletFact(fact, next, today),
            ...(worthAdding ? { thenFocus } : {}),
          },
        ];
      }}
      form={(edit) => <SubletForm edit={edit} />}
    />
  );
}
