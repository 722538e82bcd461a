// The findings of Money, each drawn from the overview that the program reckoned. Nothing is reckoned here but what goes where.
import type { MoneyView } from '../../../app/contract/money-view.ts';
import { showCents } from '../../../app/domain/shared/cents.ts';
import { causesInOrder, standingNames } from '../../../app/domain/time/cause.ts';
import { causeLooks } from '../../../app/domain/time/cause-look.ts';
import { goTo } from '../../state/route-store.ts';
import { moneyScreenText as text } from '../../text/money.ts';
import { sayWholeDaysIn } from '../../text/say-day.ts';
import { Button } from '../../ui/button.tsx';
import { CauseSwatch } from '../../ui/cause-swatch.tsx';
import { hatchUrl } from '../../ui/hatch-patterns.tsx';
import { RowBars } from '../../ui/row-bars.tsx';
import { showWholeUnits } from '../../ui/whole-units.ts';
import { Finding } from './finding.tsx';

export type Shown = { readonly overview: MoneyView['overview']; readonly currency: string };

/** Rows drawn in a picture; the table has all. */
export const mostBars = 20;

export function VehicleLink({
  id,
  stockNumber,
  title,
}: {
  readonly id: string;
  readonly stockNumber: string;
  readonly title: string;
}) {
  return (
    <Button kind="quiet" label={`${stockNumber}, ${title}`} onPress={() => goTo({ screen: 'vehicle', id })}>
      {stockNumber}
    </Button>
  );
}

export function Due({ overview, currency }: Shown) {
  const { due, today, names } = overview;
  const nameOf = new Map(names.map((name) => [name.id, name]));
  const title = text.findings.due(overview);
  return (
    <Finding
      table="due"
      title={title}
      unit={text.unit.due(currency)}
      columns={[{ head: text.day }, { head: text.vehicle }, { head: text.amount, isAmount: true }, { head: text.what }]}
      rows={due.flatMap(({ dueOn, payments }) =>
        payments.map(({ vehicleId, cents, what }) => {
          const name = nameOf.get(vehicleId);
          return {
            key: `${dueOn} ${vehicleId} ${what}`,
            cells: [
              dueOn < today ? text.overdue(text.sayDay(dueOn, today)) : text.sayDay(dueOn, today),
              name ? <VehicleLink key="link" {...name} /> : '',
              showCents(cents),
              sayWholeDaysIn(what),
            ],
          };
        }),
      )}
    >
      <RowBars
        label={title}
        rows={due.slice(0, mostBars).map(({ dueOn, cents }) => ({
          key: dueOn,
          label: dueOn < today ? text.overdue(text.sayDay(dueOn, today)) : text.sayDay(dueOn, today),
          segments: [{ key: 'due', value: cents, fill: hatchUrl('programming') }],
          figure: showWholeUnits(cents),
        }))}
      />
    </Finding>
  );
}

export function Ageing({ overview, currency }: Shown) {
  const { ageing } = overview;
  const title = text.findings.ageing(overview);
  return (
    <Finding
      table="ageing"
      title={title}
      unit={text.unit.ageing(currency)}
      columns={[
        { head: text.daysHeld },
        { head: text.vehicles, isAmount: true },
        { head: text.amount, isAmount: true },
      ]}
      rows={ageing.map(({ fromDays, toDays, vehicles, tiedUpCents }) => ({
        key: String(fromDays),
        cells: [text.band(fromDays, toDays), vehicles, showCents(tiedUpCents)],
      }))}
    >
      <RowBars
        label={title}
        rows={ageing.map(({ fromDays, toDays, vehicles, tiedUpCents }) => ({
          key: String(fromDays),
          label: text.band(fromDays, toDays),
          segments: [{ key: 'tied', value: tiedUpCents, fill: hatchUrl('part') }],
          figure: `${showWholeUnits(tiedUpCents)} (${vehicles})`,
        }))}
      />
    </Finding>
  );
}

export function DaysByCause({ overview }: Shown) {
  const { months } = overview;
  const title = text.findings['days-by-cause'](overview);
  const shown = causesInOrder.filter((cause) => months.some(({ byCause }) => (byCause[cause] ?? 0) > 0));
  return (
    <Finding
      table="days-by-cause"
      title={title}
      unit={text.unit['days-by-cause']()}
      columns={[
        { head: text.month },
        { head: text.vehicles, isAmount: true },
        { head: text.daysHeld, isAmount: true },
        ...shown.map((cause) => ({ head: standingNames[cause], isAmount: true })),
        { head: text.idleCost, isAmount: true },
      ]}
      rows={months.map((month) => ({
        key: month.month,
        cells: [
          text.monthOf(month.month),
          month.vehicles,
          month.heldDays,
          ...shown.map((cause) => month.byCause[cause] ?? 0),
          showCents(month.idleCents),
        ],
      }))}
    >
      <div className="finding-legend">
        {shown.map((cause) => (
          <span key={cause}>
            <CauseSwatch standing={cause} /> {standingNames[cause]}
          </span>
        ))}
      </div>
      <RowBars
        label={`${title}. ${months.map(({ month, heldDays, idleDays }) => `${text.monthOf(month)}: ${heldDays}, ${text.causeDays('idle', idleDays)}`).join('; ')}`}
        rows={months.map(({ month, byCause, heldDays }) => ({
          key: month,
          label: text.monthOf(month),
          segments: shown.map((cause) => ({
            key: cause,
            value: byCause[cause] ?? 0,
            fill: hatchUrl(cause),
            isOpen: causeLooks[cause].hatch === 'open',
          })),
          figure: String(heldDays),
        }))}
      />
    </Finding>
  );
}

export function LetGo({ overview }: Shown) {
  return (
    <Finding
      table="let-go"
      title={text.findings['let-go'](overview)}
      columns={[{ head: text.vehicle }, { head: text.what }, { head: text.betterBy, isAmount: true }]}
      rows={overview.letGo.map((one) => ({
        key: one.id,
        cells: [<VehicleLink key="link" {...one} />, one.title, showCents(one.betterByCents)],
      }))}
    />
  );
}

export function Slowest({ overview }: Shown) {
  return (
    <Finding
      table="slowest"
      title={text.findings.slowest(overview)}
      columns={[
        { head: text.who },
        { head: text.kind },
        { head: text.middle, isAmount: true },
        { head: text.longest, isAmount: true },
        { head: text.cases, isAmount: true },
        { head: text.late, isAmount: true },
      ]}
      rows={overview.slowest.map((one) => ({
        key: `${one.kind} ${one.group}`,
        cells: [
          one.group,
          text.kindNames[one.kind] ?? one.kind,
          one.medianDays,
          one.longestDays,
          one.cases,
          text.lateOf(one.late, one.promised),
        ],
      }))}
    />
  );
}
