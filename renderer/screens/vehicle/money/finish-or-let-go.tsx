// Finishing against letting go: both ways with their dates and what they are made of, how far the answer is from turning, what is missing.
import type { VehicleView } from '../../../../app/contract/views.ts';
import type { FinishOrLetGo, Way } from '../../../../app/domain/money/finish-or-let-go.ts';
import { showCents } from '../../../../app/domain/shared/cents.ts';
import { prospectText as text } from '../../../text/prospect.ts';
import { Facts } from '../../../ui/facts.tsx';
import { SectionHead } from '../../../ui/section-head.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { Amount } from './margin-facts.tsx';

function WayTable({ name, way }: { readonly name: string; readonly way: Way }) {
  const { today } = useVehicle();
  return (
    <details className="way">
      <summary>
        <span>
          {name} <span className="quiet">{text.on(way.on, today)}</span>
        </span>
        <b>
          <Amount cents={way.resultCents} />
        </b>
      </summary>
      <table className="cost-figures">
        <caption className="unseen">{name}</caption>
        <tbody>
          {way.lines.map(({ what, cents }) => (
            <tr key={what} className="cost-line">
              <th scope="row">{what}</th>
              <td className="amount">{showCents(cents)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{text.result}</th>
            <td className="amount">{showCents(way.resultCents)}</td>
          </tr>
        </tfoot>
      </table>
    </details>
  );
}

function Sensitivity({ whatIfs }: Pick<FinishOrLetGo, 'whatIfs'>) {
  const days = [-7, 0, 7] as const;
  return (
    <table className="cost-figures">
      <caption>{text.sensitivity}</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">{text.asking(0)}</span>
          </th>
          {days.map((moved) => (
            <th key={moved} scope="col" className="amount">
              {text.readyMoved(moved)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {([-5, 0, 5] as const).map((percent) => (
          <tr key={percent}>
            <th scope="row">{text.asking(percent)}</th>
            {days.map((moved) => {
              const cell = whatIfs.find(
                ({ askingPercent, readyDays }) => askingPercent === percent && readyDays === moved,
              );
              return (
                <td key={moved} className="amount">
                  {cell && (
                    <>
                      <Amount cents={cell.resultCents} />{' '}
                      <span className="quiet">{text.verdictWord[cell.verdict]}</span>
                    </>
                  )}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function FinishOrLetGoFacts({ prospect }: { readonly prospect: NonNullable<VehicleView['prospect']> }) {
  const { today } = useVehicle();
  const { saleOn, daysToSell, daysToSellCases, marginAtSaleCents, weighed } = prospect;
  return (
    <section className="finish-or-let-go" aria-label={text.title}>
      <SectionHead title={text.title} level={3} />
      {weighed.ok ? (
        <>
          <p className={weighed.value.verdict === 'let-go' ? 'money-warning' : undefined}>
            <b>{text.verdict(weighed.value.verdict, weighed.value.advantageCents)}</b>
          </p>
          <WayTable name={text.finish} way={weighed.value.finish} />
          <WayTable name={text.letGo} way={weighed.value.letGo} />
        </>
      ) : (
        <div className="money-missing">
          <p>{text.missing}</p>
          <ul>
            {weighed.error.map(({ sentence }) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      )}
      <Facts
        rows={[
          ...(saleOn === null || daysToSell === null
            ? []
            : [{ label: text.saleOn, value: text.saleWords(saleOn, daysToSell, daysToSellCases, today) }]),
          { label: text.marginAtSale, value: <Amount cents={marginAtSaleCents} />, isAmount: true, isStrong: true },
          ...(weighed.ok
            ? [
                { label: text.spendRoom, value: <Amount cents={weighed.value.spendRoomCents} />, isAmount: true },
                { label: text.daysRoom, value: text.days(weighed.value.daysRoom, weighed.value.readyByOn, today) },
              ]
            : []),
        ]}
      />
      {weighed.ok && <Sensitivity whatIfs={weighed.value.whatIfs} />}
    </section>
  );
}
