// What the vehicle screen says of parts, days, costs and scans, out of the record alone.
import { describe, expect, it } from 'vitest';
import { nothingElseRead, plainCode, type Scan } from '../../../../app/domain/diagnosis/scan.ts';
import { sumCents } from '../../../../app/domain/shared/cents.ts';
import { freshPart } from '../../../../renderer/screens/vehicle/fresh-facts.ts';
import { costRows } from '../../../../renderer/screens/vehicle/money/cost-table.ts';
import { partState } from '../../../../renderer/screens/vehicle/parts/part-state.ts';
import { readComparison } from '../../../../renderer/screens/vehicle/scans/comparison-rows.ts';
import { dayWords } from '../../../../renderer/screens/vehicle/strip/day-words.ts';
import { exampleToday, exampleVehicle, reckonExample } from '../../../helpers/sheet-example.ts';

describe('where a part stands', () => {
  const part = freshPart('part-0001', '2026-03-01');
  it.each([
    [{}, 'to order since 1 Mar'],
    [{ orderedOn: '2026-03-02' }, 'ordered 2 Mar, no day promised'],
    [{ orderedOn: '2026-03-02', expectedOn: '2026-03-20' }, 'ordered 2 Mar, expected 20 Mar'],
    [{ orderedOn: '2026-03-02', expectedOn: '2026-03-15' }, 'ordered 2 Mar, expected 15 Mar, 3 days late'],
    [{ orderedOn: '2026-03-02', receivedOn: '2026-03-10' }, 'here since 10 Mar'],
    [{ orderedOn: '2026-03-02', receivedOn: '2026-03-10', returnedOn: '2026-03-12' }, 'sent back 12 Mar'],
    [{ orderedOn: '2026-03-02', receivedOn: '2026-03-10', fittedOn: '2026-03-11' }, 'fitted 11 Mar'],
    [
      { orderedOn: '2026-03-02', receivedOn: '2026-03-10', fittedOn: '2026-03-11', coreChargeCents: 100 },
      'fitted 11 Mar, core to return',
    ],
  ])('%j reads as %s', (more, words) => {
    expect(partState({ ...part, ...more }, '2026-03-18')).toBe(words);
  });
});

describe('a day of the strip in words', () => {
  const reckoning = reckonExample(exampleVehicle);
  const shown = { ...reckoning, vehicle: exampleVehicle, today: exampleToday, forecast: null };

  it('names the cause of every day held, and its place in the run', () => {
    for (const stretch of reckoning.held.stretches) {
      const words = dayWords(shown, stretch.from);
      expect(words).toContain(stretch.days > 1 ? `(day 1 of ${stretch.days})` : ':');
    }
  });

  it('says today what it stands at, and of the future only what was promised', () => {
    expect(dayWords(shown, exampleToday)).toContain('today');
    const promised = { ...shown, held: { ...shown.held, now: { ...shown.held.now, expectedOn: '2026-03-20' } } };
    expect(dayWords(promised, '2026-03-19')).toContain('as promised');
    expect(dayWords(promised, '2026-03-25')).toContain('nothing is promised');
  });

  it('says from when on the margin is used up', () => {
    const { breakEvenOn } = reckoning.costs;
    if (breakEvenOn === null) throw new Error('The example has a break-even day.');
    expect(dayWords(shown, breakEvenOn)).toContain('last day on which the margin holds');
  });

  it('says from when on it is likely ready, and surely', () => {
    const forecast = { likelyOn: '2026-03-25', safeOn: '2026-03-29', runs: 400, items: [] };
    const words = (day: string) => dayWords({ ...shown, forecast }, day);
    expect(words('2026-03-24')).not.toContain('ready');
    expect(words('2026-03-25')).toContain('half of all runs');
    expect(words('2026-03-27')).toContain('between the likely and the safe day');
    expect(words('2026-03-29')).toContain('80 of 100');
    expect(words('2026-03-30')).toContain('ready by then');
  });

  it('says what is due to the lender on that day', () => {
    const payment = { dueOn: '2026-03-24', cents: 120_000, balanceAfterCents: 0, what: 'payment' };
    const costs = { ...reckoning.costs, payments: [payment] };
    expect(dayWords({ ...shown, costs }, '2026-03-24')).toContain('1,200.00 due to the lender');
    expect(dayWords({ ...shown, costs }, '2026-03-25')).not.toContain('lender');
  });

  it('says when what it waited for was ordered, from whom, and when it was promised and came', () => {
    const [part] = exampleVehicle.parts;
    if (!part) throw new Error('The example has a part.');
    const waiting = { ...part, what: 'amplifier', supplier: 'Yard', orderedOn: '2026-03-02', expectedOn: '2026-03-06' };
    const vehicle = { ...exampleVehicle, parts: [{ ...waiting, receivedOn: '2026-03-09' }] };
    const stretch = { cause: 'part' as const, from: '2026-03-02', days: 7, what: 'amplifier from Yard' };
    const words = dayWords({ ...shown, vehicle, held: { ...shown.held, stretches: [stretch] } }, '2026-03-05');
    expect(words).toContain('; ordered on 2 Mar from Yard, promised for 6 Mar, here on 9 Mar');
    const late = { ...vehicle, parts: [{ ...waiting, receivedOn: null }] };
    expect(
      dayWords({ ...shown, vehicle: late, held: { ...shown.held, stretches: [stretch] } }, '2026-03-05'),
    ).toContain('not here yet');
  });

  it('says nothing of the margin to whoever sees no money', () => {
    const { breakEvenOn } = reckoning.costs;
    expect(dayWords({ ...shown, costs: null }, breakEvenOn ?? exampleToday)).not.toContain('margin');
  });
});

describe('the table of costs', () => {
  it('adds up to the totals of the reckoning, whatever the groups', () => {
    const { costs } = reckonExample(exampleVehicle);
    const rows = costRows(costs);
    expect(sumCents(rows.map((row) => row.byState.spent))).toBe(costs.spentCents);
    expect(sumCents(rows.map((row) => row.byState.committed))).toBe(costs.committedCents);
    expect(sumCents(rows.map((row) => row.byState['to-come']))).toBe(costs.toComeCents);
    expect(rows.flatMap((row) => row.lines)).toHaveLength(costs.lines.length);
  });
});

describe('two scans read against each other', () => {
  const scan = (kind: Scan['kind'], modules: Scan['modules']): Scan => ({
    id: `scan-${kind}`,
    takenOn: kind === 'pre-repair' ? '2026-03-04' : '2026-03-24',
    kind,
    ...nothingElseRead,
    device: '',
    note: '',
    modules,
    entered: { by: 'tomas', at: '2026-03-24T10:00:00.000Z' },
  });
  const code = (text: string) => plainCode(text, 'present');
  const before = scan('pre-repair', [
    { name: 'Engine', answered: true, codes: [code('U0140'), code('P0562')] },
    { name: 'Body', answered: false, codes: [] },
    { name: 'Climate', answered: true, codes: [] },
  ]);
  const after = scan('post-repair', [
    { name: 'Engine', answered: true, codes: [code('P0562')] },
    { name: 'Body', answered: true, codes: [code('B1000')] },
    { name: 'Climate', answered: true, codes: [] },
  ]);

  it('reads what needs somebody first and what is gone last, with what happened to the modules', () => {
    const { groups, modules } = readComparison(before, after);
    expect(modules.map((one) => `${one.module} ${one.change}`)).toEqual(['Body came-back']);
    expect(groups.map((group) => `${group.kind}: ${group.codes.map((one) => one.code).join(' ')}`)).toEqual([
      'new: B1000',
      'stayed: P0562',
      'gone: U0140',
    ]);
  });
});
