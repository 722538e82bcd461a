// Parts: needed, ordered, expected, here, fitted or sent back, and the core that rides on them.
import { type PartDraft, partDraftSchema } from '../../../../app/domain/parts/part.ts';
import { showCents } from '../../../../app/domain/shared/cents.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { tableText } from '../../../text/tables.ts';
import { partText, sectionNames } from '../../../text/vehicle-entries.ts';
import { CsvButton } from '../../../ui/csv-button.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { MoneyField } from '../../../ui/money-field.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { freshPart, likelyFault } from '../fresh-facts.ts';
import { ChaseList } from '../ledger/chase-list.tsx';
import { usedWords } from '../ledger/choices.ts';
import { asTyped, type FactKind } from '../ledger/fact-kind.ts';
import { FaultField } from '../ledger/fault-field.tsx';
import { FieldPlace } from '../ledger/field-place.tsx';
import { Ledger } from '../ledger/ledger.tsx';
import { maySeePartPrices } from '../may-change.ts';
import { nextPartFact, withPartFact } from '../next-facts.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { partState } from './part-state.ts';

const partKind: FactKind<PartDraft> = {
  list: 'parts',
  schema: partDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'parts', item }),
  toValue: asTyped,
};

function isDone(part: PartDraft): boolean {
  return nextPartFact(part) === null;
}

function PartForm({ edit }: { readonly edit: Editing<Typed<PartDraft>> }) {
  const { vehicle, today, currency } = useVehicle();
  const suppliers = usedWords([...vehicle.parts, ...vehicle.sublets].map((entry) => entry.supplier));
  return (
    <>
      <div className="field-grid">
        <TextField label={partText.what} {...edit.at('what')} isRequired />
        <TextField label={partText.partNumber} {...edit.at('partNumber')} code />
        <TextField label={partText.supplier} {...edit.at('supplier')} list={suppliers} />
        <FaultField label={partText.fault} {...edit.at('faultId')} />
        <NumberField label={partText.quantity} {...edit.at('quantity')} minimum={1} maximum={999} />
        <MoneyField label={partText.price} {...edit.centsAt('priceCents')} currency={currency} />
        <MoneyField label={partText.core} {...edit.centsAt('coreChargeCents')} currency={currency} />
        <DayField label={partText.neededOn} {...edit.at('neededOn')} today={today} isRequired />
        <FieldPlace name="orderedOn">
          <DayField label={partText.orderedOn} {...edit.at('orderedOn')} today={today} />
        </FieldPlace>
        <FieldPlace name="expectedOn">
          <DayField label={partText.expectedOn} {...edit.at('expectedOn')} today={today} />
        </FieldPlace>
        <FieldPlace name="receivedOn">
          <DayField label={partText.receivedOn} {...edit.at('receivedOn')} today={today} />
        </FieldPlace>
        <DayField label={partText.fittedOn} {...edit.at('fittedOn')} today={today} />
        <DayField label={partText.returnedOn} {...edit.at('returnedOn')} today={today} />
        <DayField label={partText.coreReturnedOn} {...edit.at('coreReturnedOn')} today={today} />
        <TextField label={partText.note} {...edit.at('note')} isWide />
      </div>
      <ChaseList chases={edit.value.chases} onChange={(chases) => edit.set({ chases })} />
    </>
  );
}

export function PartsSection() {
  const { vehicle, today, role } = useVehicle();
  const showsPrices = maySeePartPrices(role);
  const parts = vehicle.parts.toSorted((a, b) => Number(isDone(a)) - Number(isDone(b)));
  return (
    <Ledger
      section="parts"
      title={sectionNames.parts}
      kind={partKind}
      facts={parts}
      aside={
        parts.length > 0 &&
        role !== 'sales' && <CsvButton what={tableText.parts} table={() => ({ table: 'parts', id: vehicle.id })} />
      }
      nameOf={(part) => part.what}
      addLabel={partText.add}
      emptySentence={partText.empty}
      makeNew={(id) => ({ ...freshPart(id, today), faultId: likelyFault(vehicle)?.id ?? null })}
      isDone={isDone}
      columns={[
        {
          title: partText.what,
          cell: (part) => (
            <>
              {part.what}
              {part.quantity > 1 ? ` × ${part.quantity}` : ''}
            </>
          ),
        },
        { title: partText.partNumber, cell: (part) => <span className="code">{part.partNumber}</span> },
        { title: partText.supplier, cell: (part) => part.supplier },
        { title: partText.state, cell: (part) => partState(part, today) },
        { title: partText.note, cell: (part) => <span className="quiet">{part.note}</span> },
        ...(showsPrices
          ? [
              {
                title: partText.priceColumn,
                align: 'right' as const,
                cell: (part: PartDraft) =>
                  part.priceCents === null ? '–' : showCents(part.priceCents * part.quantity),
              },
              {
                title: partText.coreColumn,
                align: 'right' as const,
                cell: (part: PartDraft) =>
                  part.coreChargeCents === 0 ? '' : showCents(part.coreChargeCents * part.quantity),
              },
            ]
          : []),
      ]}
      quickActions={(part) => {
        const next = nextPartFact(part);
        if (next === null) return [];
        const promise = next === 'ordered' && part.expectedOn === null ? { thenFocus: 'expectedOn' } : {};
        return [{ label: partText.quick[next], apply: (fact) => withPartFact(fact, next, today), ...promise }];
      }}
      form={(edit) => <PartForm edit={edit} />}
    />
  );
}
