// The sale: recorded when it happens, with a plain word when gates still hold the vehicle.
import { isHolding } from '../../../../app/domain/readiness/gate.ts';
import { showCents } from '../../../../app/domain/shared/cents.ts';
import { type Sale, saleSchema } from '../../../../app/domain/vehicle/purchase.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import { notify } from '../../../state/notice-store.ts';
import { errorSentence } from '../../../text/errors.ts';
import { sayDay } from '../../../text/say-day.ts';
import { sectionNames } from '../../../text/vehicle-entries.ts';
import { saleText } from '../../../text/vehicle-work.ts';
import { Button } from '../../../ui/button.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { Facts } from '../../../ui/facts.tsx';
import { MoneyField } from '../../../ui/money-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { SectionForm } from '../ledger/section-form.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { VehicleSection } from '../page/vehicle-section.tsx';

function HeldWarning() {
  const { view, vehicle } = useVehicle();
  const holding = view.readiness.gates.filter(isHolding);
  if (holding.length === 0 || vehicle.sale !== null) return null;
  return (
    <div className="sale-warning">
      <p>{saleText.held(holding.length)}</p>
      <ul>
        {holding.map((gate) => (
          <li key={gate.key}>{gate.title}</li>
        ))}
      </ul>
    </div>
  );
}

export function SaleSection() {
  const state = useVehicle();
  const { vehicle, view, today, currency } = state;
  const { sale } = vehicle;
  const base: Typed<Sale> = sale ?? {
    soldOn: today,
    priceCents: vehicle.targets.askingCents,
    buyer: '',
    paidOffOn: null,
  };
  const isFunded = vehicle.purchase.fundingPlanId !== null;
  const payoff = view.costs?.payoff ?? null;
  const takeBack = async () => {
    const answer = await state.change({ kind: 'set', section: 'sale', value: null });
    if (answer.ok) notify('done', saleText.takenBack);
    else notify('problem', errorSentence(answer.error));
  };
  const showsMoney = view.costs !== null;
  return (
    <VehicleSection section="sale" title={sectionNames.sale}>
      <SectionForm<Sale>
        part="sale"
        label={saleText.sale}
        schema={saleSchema}
        base={base}
        toChange={(value) => ({ kind: 'set', section: 'sale', value })}
        saveLabel={saleText.saveSale}
        correctLabel={sale === null ? saleText.sell : saleText.correct}
        actions={
          sale === null ? undefined : (
            <Button kind="quiet" onPress={() => void takeBack()}>
              {saleText.takeBack}
            </Button>
          )
        }
        shown={
          sale === null ? (
            <p className="section-note">{saleText.notSold}</p>
          ) : (
            <Facts
              rows={[
                { label: saleText.soldOn, value: sayDay(sale.soldOn, today) },
                ...(showsMoney ? [{ label: saleText.price, value: showCents(sale.priceCents) }] : []),
                { label: saleText.buyer, value: sale.buyer },
                ...(isFunded
                  ? [
                      {
                        label: saleText.payoff,
                        value:
                          payoff === null
                            ? saleText.paidOff(sale.paidOffOn, today)
                            : saleText.owed(payoff.cents, payoff.dueOn, today),
                      },
                    ]
                  : []),
              ]}
            />
          )
        }
        form={(edit) => {
          const price = edit.value.priceCents;
          const spent = view.costs?.spentCents ?? null;
          const isLoss = price !== null && spent !== null && price < spent;
          return (
            <>
              <HeldWarning />
              <div className="field-grid">
                <DayField label={saleText.soldOn} {...edit.at('soldOn')} today={today} isRequired />
                <MoneyField
                  label={saleText.price}
                  {...edit.centsAt('priceCents')}
                  currency={currency}
                  hint={isLoss ? saleText.belowCost : undefined}
                  isRequired
                />
                <TextField label={saleText.buyer} {...edit.at('buyer')} />
                {isFunded && (
                  <DayField
                    label={saleText.paidOffOn}
                    {...edit.at('paidOffOn')}
                    today={today}
                    hint={saleText.paidOffHint}
                  />
                )}
              </div>
            </>
          );
        }}
      />
    </VehicleSection>
  );
}
