// The plan of programming on paper: the kept order with boxes, gates, cautions where the work is, blanks, attempts, contradictions.
import { describe, expect, it } from 'vitest';
import type { MakerOrder } from '../../../app/domain/programming/maker-order.ts';
import { planSheet, whyNoPlanSheet } from '../../../app/domain/sheets/plan-sheet.ts';
import { type Sheet, type SheetBlock, sheetSchema } from '../../../app/domain/sheets/sheet.ts';
import { bodyExchange, doneUpTo, jobModule, plannedJob } from '../../helpers/planned-job.ts';
import { exampleAmounts, examplePrinting, exampleShop, exampleVehicle } from '../../helpers/sheet-example.ts';
import { amountsIn, sheetText } from '../../helpers/sheet-text.ts';
import { makeAttempt, makeVehicle } from '../../helpers/vehicle-maker.ts';

function blocksOf<Kind extends SheetBlock['kind']>(sheet: Sheet, kind: Kind) {
  return sheet.blocks.filter((block): block is Extract<SheetBlock, { kind: Kind }> => block.kind === kind);
}

const { vehicle: untouched, job } = bodyExchange('2026-03-06');
const readStep = job.plan.steps.find(({ meets }) => meets.includes('old-module-saved'));
const writeVin = job.plan.steps.find(
  ({ cautions, cannotBeUndone }) => cannotBeUndone && cautions.includes('vin-permanent'),
);
const firstWithVin = job.plan.steps.find(({ cautions }) => cautions.includes('vin-permanent'));
if (!readStep || !writeVin) throw new Error('The general pack has lost the steps that these tests are about.');
const failed = makeAttempt('2026-03-07', job, readStep.id, { outcome: 'failed', message: 'no answer on the bus' });
const vehicle = { ...untouched, attempts: [failed] };
const sheet = planSheet(vehicle, exampleShop, examplePrinting);
const steps = blocksOf(sheet, 'steps').flatMap(({ items }) => items);

describe('the programming plan sheet', () => {
  it('is a sheet by its schema, without money', () => {
    expect(sheetSchema.safeParse(sheet).error?.issues).toBeUndefined();
    const example = planSheet(exampleVehicle, exampleShop, examplePrinting);
    expect(amountsIn(sheetText(example), exampleAmounts)).toEqual([]);
  });

  it('has every step of the kept plan once, in its order, numbered through all stages', () => {
    expect(steps.map(({ text }) => text)).toEqual(job.plan.steps.map(({ title }) => title));
    let next = 1;
    for (const block of blocksOf(sheet, 'steps')) {
      expect(block.firstNumber).toBe(next);
      next += block.items.length;
    }
  });

  it('shows what must be true first, ticked where the record says that it is', () => {
    const fit = steps.find(({ needs }) => needs?.some(({ text }) => text === 'used unit is known to fit'));
    expect(fit?.needs).toContainEqual({ text: 'replacement is here', isMet: true });
    expect(fit?.needs).toContainEqual({ text: 'data of the old unit is saved', isMet: false });
  });

  it('says what cannot be undone, asks for the end of the VIN there, and for the volts where something is written', () => {
    const step = steps.find(({ text }) => text === writeVin.title);
    expect(step?.marks.map(({ text }) => text)).toContain('Cannot be undone');
    expect(step?.blanks).toEqual(['VIN, last eight', 'volts before', 'lowest', 'after', 'reference']);
  });

  it('prints a caution in full once, before the stage whose steps carry it first', () => {
    const keys = blocksOf(sheet, 'caution').map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    const at = sheet.blocks.findIndex((block) => block.kind === 'caution' && block.key === 'vin-permanent');
    const stepsAt = sheet.blocks.findIndex(
      (block) => block.kind === 'steps' && block.items.some(({ text }) => text === firstWithVin?.title),
    );
    expect(at).toBeGreaterThan(0);
    expect(at).toBeLessThan(stepsAt);
    expect(sheet.blocks.slice(at, stepsAt).every(({ kind }) => kind === 'caution')).toBe(true);
  });

  it('tells of every attempt so far beside its step', () => {
    const step = steps.find(({ text }) => text === readStep.title);
    expect(step?.state).toBe('open');
    expect(step?.marks.map(({ text }) => text).join()).toContain('Failed 7 Mar 2026 · on the vehicle');
    expect(step?.marks.map(({ text }) => text).join()).toContain('no answer on the bus');
  });

  it('ticks what is done and asks nothing of it any more', () => {
    const later = planSheet(doneUpTo(untouched, job, writeVin.id, '2026-03-09'), exampleShop, examplePrinting);
    const items = blocksOf(later, 'steps').flatMap((block) => block.items);
    const place = job.plan.steps.findIndex(({ id }) => id === writeVin.id);
    for (const item of items.slice(0, place)) expect(item).toMatchObject({ state: 'done', blanks: [], detail: '' });
    expect(items[place]?.state).toBe('open');
  });

  it('leaves room for the numbers of units that are exchanged, not of those that stay', () => {
    const [modules] = blocksOf(sheet, 'table');
    expect(modules?.rowRoom).toBe('writing');
    expect(modules?.rows.map((row) => row[3]?.text)).toEqual(['', 'stays', 'stays']);
  });

  it('asks for the maker’s own order while none is typed in, and names it once it is, with what does not agree', () => {
    expect(sheetText(sheet)).toContain('The maker’s own order is not typed in.');
    const modules = [jobModule('body', 'used', { name: 'Body' })];
    const plain = plannedJob('2026-03-06', modules);
    const link = plain.plan.links[0];
    if (!link) throw new Error('The plan has no order to turn round.');
    const makerOrder: MakerOrder = {
      document: 'Workshop information 12-04',
      readOn: '2026-03-05',
      ownSteps: [],
      sequence: [link.after, link.before],
      pairs: [],
      accepted: [],
    };
    const turned = plannedJob('2026-03-06', modules, { makerOrder });
    const text = sheetText(planSheet(makeVehicle('2026-03-02', { jobs: [turned] }), exampleShop, examplePrinting));
    expect(text).toContain('This order follows the maker’s own, “Workshop information 12-04”, read on 5 Mar 2026.');
    expect(text).toContain('What does not agree');
    expect(text).toContain('Not settled. The maker’s order and the rule pack do not agree');
    expect(text).toContain('Order not settled: see above');
  });

  it('prints all open jobs, or the one that is named, and only says that the others are finished', () => {
    const second = plannedJob('2026-03-08', [jobModule('radio', 'new', { name: 'Radio' })], { title: 'Radio set' });
    const both = { ...untouched, jobs: [job, second] };
    const titles = (of: Sheet) =>
      blocksOf(of, 'heading')
        .filter(({ level }) => level === 2)
        .map(({ text }) => text);
    expect(titles(planSheet(both, exampleShop, examplePrinting))).toEqual(['Program Body', 'Program Radio set']);
    expect(titles(planSheet(both, exampleShop, examplePrinting, second.id))).toEqual(['Program Radio set']);
    const done = second.plan.steps.map(({ id }) => makeAttempt('2026-03-09', second, id));
    const oneDone = planSheet({ ...both, attempts: done }, exampleShop, examplePrinting);
    expect(titles(oneDone)).toEqual(['Finished jobs', 'Program Body']);
  });

  it('is not printed of a vehicle without a job, or of a job that is gone', () => {
    expect(whyNoPlanSheet(makeVehicle('2026-03-02'), null)).toContain('no programming job');
    expect(whyNoPlanSheet(untouched, 'other')).toContain('no longer in the record');
    expect(whyNoPlanSheet(untouched, job.id)).toBeNull();
  });
});
