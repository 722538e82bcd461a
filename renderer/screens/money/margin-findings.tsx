// The findings of Money about single vehicles' money: what is tied up in which, margin against plan, budget against cost.
import { showCents } from '../../../app/domain/shared/cents.ts';
import { budgetText } from '../../text/budget.ts';
import { moneyScreenText as text } from '../../text/money.ts';
import { hatchUrl } from '../../ui/hatch-patterns.tsx';
import { RowBars } from '../../ui/row-bars.tsx';
import { showWholeUnits } from '../../ui/whole-units.ts';
import { Finding } from './finding.tsx';
import { mostBars, type Shown, VehicleLink } from './money-findings.tsx';

/** In a picture; the table has all. */
const mostOpen = 8;

export function OpenVehicles({ overview, currency }: Shown) {
  const { openVehicles } = overview;
  const title = text.findings.open(overview);
  return (
    <Finding
      table="open"
      title={title}
      unit={text.unit.open(currency)}
      columns={[
        { head: text.vehicle },
        { head: text.what },
        { head: text.daysHeld, isAmount: true },
        { head: text.tiedUpHead, isAmount: true },
        { head: text.owedHead, isAmount: true },
        { head: text.nextDayHead, isAmount: true },
      ]}
      rows={openVehicles.map((one) => ({
        key: one.id,
        cells: [
          <VehicleLink key="link" {...one} />,
          one.title,
          one.heldDays,
          showCents(one.tiedUpCents),
          showCents(one.owedCents),
          showCents(one.nextDayCents),
        ],
      }))}
    >
      <RowBars
        label={title}
        rows={openVehicles.slice(0, mostOpen).map((one) => ({
          key: one.id,
          label: one.stockNumber,
          segments: [{ key: 'tied', value: one.tiedUpCents, fill: hatchUrl('part') }],
          figure: showWholeUnits(one.tiedUpCents),
        }))}
      />
    </Finding>
  );
}

export function Sold({ overview, currency }: Shown) {
  const { sold, today } = overview;
  const title = text.findings.sold(overview);
  return (
    <Finding
      table="sold"
      title={title}
      unit={text.unit.sold(currency)}
      columns={[
        { head: text.vehicle },
        { head: text.soldOn },
        { head: text.daysHeld, isAmount: true },
        { head: text.planned, isAmount: true },
        { head: text.earned, isAmount: true },
        { head: text.holding, isAmount: true },
        { head: text.tax, isAmount: true },
        { head: text.made, isAmount: true },
      ]}
      rows={sold.map((one) => ({
        key: one.id,
        cells: [
          <VehicleLink key="link" {...one} />,
          text.sayDay(one.soldOn, today),
          one.heldDays,
          one.plannedCents === null ? '–' : showCents(one.plannedCents),
          showCents(one.earnedCents),
          showCents(one.holdingCents),
          showCents(one.taxCents),
          showCents(one.madeCents),
        ],
      }))}
    >
      <RowBars
        label={title}
        rows={sold.slice(0, mostBars).map((one) => ({
          key: one.id,
          label: `${one.stockNumber}, ${text.sayDay(one.soldOn, today)}`,
          segments: [{ key: 'earned', value: one.earnedCents, fill: hatchUrl(one.earnedCents < 0 ? 'idle' : 'work') }],
          mark: one.plannedCents,
          figure: text.madeOf(
            showWholeUnits(one.earnedCents),
            one.plannedCents === null ? null : showWholeUnits(one.plannedCents),
          ),
        }))}
      />
    </Finding>
  );
}

export function Budgets({ overview, currency }: Shown) {
  const { budgets, names } = overview;
  const nameOf = new Map(names.map((name) => [name.id, name]));
  const title = text.findings.budgets(overview);
  // The whole would make the groups too short to read.
  const groups = budgets.filter(({ group }) => group !== null);
  const drawn = groups.length > 0 ? groups : budgets;
  const keyOf = (group: (typeof budgets)[number]['group']) => group ?? 'whole';
  return (
    <Finding
      table="budgets"
      title={title}
      unit={text.unit.budgets(currency)}
      columns={[
        { head: text.group },
        { head: text.vehicles, isAmount: true },
        { head: text.budget, isAmount: true },
        { head: text.spent, isAmount: true },
        { head: text.committed, isAmount: true },
        { head: text.toCome, isAmount: true },
        { head: text.left, isAmount: true },
        { head: text.over },
      ]}
      rows={budgets.map((row) => ({
        key: keyOf(row.group),
        cells: [
          budgetText.nameOf(row.group),
          row.vehicles,
          showCents(row.budgetCents),
          showCents(row.spentCents),
          showCents(row.committedCents),
          showCents(row.toComeCents),
          showCents(row.leftCents),
          row.over.map(({ vehicleId, leftCents }) => {
            const name = nameOf.get(vehicleId);
            return name ? (
              <span key={vehicleId} title={budgetText.overBy(leftCents)}>
                <VehicleLink {...name} />{' '}
              </span>
            ) : null;
          }),
        ],
      }))}
    >
      <RowBars
        label={title}
        rows={drawn.map((row) => ({
          key: keyOf(row.group),
          label: budgetText.nameOf(row.group),
          segments: [
            { key: 'spent', value: row.spentCents, fill: hatchUrl('work') },
            { key: 'committed', value: row.committedCents, fill: hatchUrl('part') },
            { key: 'to-come', value: row.toComeCents, fill: 'none', isOpen: true },
          ],
          mark: row.budgetCents,
          figure: text.madeOf(
            showWholeUnits(row.spentCents + row.committedCents + row.toComeCents),
            showWholeUnits(row.budgetCents),
          ),
        }))}
      />
    </Finding>
  );
}
