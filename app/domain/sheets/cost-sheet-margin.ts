// Parts of the cost sheet: the margin as planned beside what was made or is expected, the tax on it, and budgets held against costs.
import type { Shop } from '../fleet/shop.ts';
import type { BudgetGroup, BudgetStanding } from '../money/budget.ts';
import { wholeBudgetCents } from '../money/budget.ts';
import type { Costs } from '../money/costs.ts';
import { marginTax } from '../money/margin-tax.ts';
import { type Cents, showCents } from '../shared/cents.ts';
import type { VehicleReckoning } from '../vehicle/reckon.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { showRate } from './cost-sheet-holding.ts';
import type { SheetBlock } from './sheet.ts';
import { plain, quiet, strong } from './sheet-words.ts';

type Amount = Cents | null;
type Line = { readonly what: string; readonly planned: Amount; readonly real: Amount; readonly isResult?: boolean };

function minus(amount: Amount, ...others: readonly Amount[]): Amount {
  return others.reduce<Amount>((left, other) => (left === null || other === null ? null : left - other), amount);
}

function showAmount(amount: Amount): string {
  return amount === null ? '–' : showCents(amount);
}

/** With a sign in front, so that more and less are told apart without a colour. */
function showDifference(amount: Amount): string {
  if (amount === null) return '';
  return amount > 0 ? `+${showCents(amount)}` : showCents(amount);
}

function taxWords({ saleTax }: Shop): string {
  if (saleTax.kind === 'none') return 'The shop pays no tax on the margin.';
  const { numerator, denominator } = saleTax.rate;
  const rate = showRate(Math.round((numerator * 1_000_000) / denominator));
  return `Tax on the margin: ${rate} of the price without tax, taken out of selling price less purchase price; repairs do not lower it. None on a loss.`;
}

/**
 * Planned: asking price, purchase, budget and tax at the asking price; nobody plans days, so holding is only in the second column. Own
 * layout ("common practice, no source").
 */
export function marginBlocks(vehicle: Vehicle, { costs }: VehicleReckoning, shop: Shop): SheetBlock[] {
  const { purchase, targets, sale } = vehicle;
  const asking = targets.askingCents;
  const price = sale?.priceCents ?? asking;
  const budget = wholeBudgetCents(targets);
  const { acquisitionCents } = costs;
  const whole = costs.budgets[costs.budgets.length - 1];
  const work = whole === undefined ? 0 : whole.spentCents + whole.committedCents + whole.toComeCents;
  const taxAsked =
    asking === null
      ? null
      : marginTax(shop.saleTax, { sellingCents: asking, purchaseCents: purchase.priceCents }).taxCents;
  const taxed = shop.saleTax.kind !== 'none';
  const planned = minus(asking, acquisitionCents, budget, taxAsked);
  const lines: Line[] = [
    { what: sale === null ? 'Asking price' : 'Selling price', planned: asking, real: price },
    { what: 'Purchase, fees and transport', planned: acquisitionCents, real: acquisitionCents },
    { what: 'Reconditioning', planned: budget, real: work },
    { what: 'Holding', planned: null, real: costs.holdingCents },
    ...(taxed ? [{ what: 'Tax on the margin', planned: taxAsked, real: costs.taxCents }] : []),
    { what: 'Margin', planned, real: costs.marginExpectedCents, isResult: true },
  ];
  const cell = (words: string, isResult: boolean | undefined) => (isResult ? strong(words) : plain(words));
  return [
    { kind: 'heading', level: 2, text: sale === null ? 'Margin planned and expected' : 'Margin planned and made' },
    {
      kind: 'table',
      caption: 'The margin as planned beside what was made or is expected',
      columns: [
        { title: '', share: 40, align: 'left' },
        { title: 'Planned', share: 20, align: 'right' },
        { title: sale === null ? 'Expected' : 'Made', share: 20, align: 'right' },
        { title: 'Difference', share: 20, align: 'right' },
      ],
      rows: lines.map(({ what, planned: plan, real, isResult }) => [
        cell(what, isResult),
        cell(showAmount(plan), isResult),
        cell(showAmount(real), isResult),
        isResult ? strong(showDifference(minus(real, plan))) : quiet(showDifference(minus(real, plan))),
      ]),
      whenEmpty: '',
      rowRoom: 'text',
    },
    {
      kind: 'paragraph',
      text: `${taxWords(shop)} Planned is before holding.${budget === null ? ' No budget is set, so no margin was planned.' : ''}`,
      emphasis: 'quiet',
    },
  ];
}

const standingWords: Readonly<Record<BudgetStanding, string>> = {
  within: 'within',
  'expected-over': 'will be over',
  over: 'over',
};

/** Budgets by group, where any is set. */
export function budgetBlocks(costs: Costs, titles: Readonly<Record<BudgetGroup, string>>): SheetBlock[] {
  const set = costs.budgets.filter(({ group, budgetCents }) => group === null || budgetCents !== null);
  if (set.every(({ budgetCents }) => budgetCents === null)) return [];
  return [
    { kind: 'heading', level: 2, text: 'Budget' },
    {
      kind: 'table',
      caption: 'Budgets of reconditioning held against what was spent, is committed and still to come',
      columns: [
        { title: 'Group', share: 22, align: 'left' },
        { title: 'Budget', share: 16, align: 'right' },
        { title: 'Spent', share: 16, align: 'right' },
        { title: 'Committed, to come', share: 18, align: 'right' },
        { title: 'Left', share: 14, align: 'right' },
        { title: '', share: 14, align: 'left' },
      ],
      rows: set.map((row) => {
        const isWhole = row.group === null;
        const cell = (words: string) => (isWhole ? strong(words) : plain(words));
        return [
          cell(row.group === null ? 'Reconditioning' : titles[row.group]),
          cell(showAmount(row.budgetCents)),
          cell(showCents(row.spentCents)),
          cell(showCents(row.committedCents + row.toComeCents)),
          cell(showAmount(row.leftCents)),
          row.standing === null
            ? quiet('')
            : row.standing === 'within'
              ? quiet(standingWords.within)
              : strong(standingWords[row.standing]),
        ];
      }),
      whenEmpty: '',
      rowRoom: 'text',
    },
  ];
}
