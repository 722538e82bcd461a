// What stands on the technician's job sheet, in which order, and what must never stand on it.
import { describe, expect, it } from 'vitest';
import { jobSheet } from '../../../app/domain/sheets/job-sheet.ts';
import { type Sheet, type SheetBlock, sheetSchema } from '../../../app/domain/sheets/sheet.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import { deferenceSentence } from '../../../app/domain/work/cautions.ts';
import {
  exampleAmounts,
  examplePrinting,
  exampleShop,
  exampleVehicle,
  reckonExample,
} from '../../helpers/sheet-example.ts';
import { amountsIn, sheetText } from '../../helpers/sheet-text.ts';
import { makeCodeRequest, makeJob, makePart, makeStep, makeVehicle } from '../../helpers/vehicle-maker.ts';

function sheetOf(vehicle: Vehicle): Sheet {
  return jobSheet(vehicle, reckonExample(vehicle), exampleShop, examplePrinting);
}

function blocksOf<Kind extends SheetBlock['kind']>(sheet: Sheet, kind: Kind) {
  return sheet.blocks.filter((block): block is Extract<SheetBlock, { kind: Kind }> => block.kind === kind);
}

const sheet = sheetOf(exampleVehicle);
const steps = blocksOf(sheet, 'steps').flatMap((block) => block.items);
const stepNamed = (text: string) => steps.find((step) => step.text.includes(text));
const headings = blocksOf(sheet, 'heading').map((block) => block.text);

describe('the job sheet', () => {
  it('is a sheet by its schema', () => {
    expect(sheetSchema.safeParse(sheet).error?.issues).toBeUndefined();
  });

  it('carries no amount of money from anywhere in the record or the shop', () => {
    const text = sheetText(sheet);
    expect(amountsIn(text, exampleAmounts)).toEqual([]);
    expect(text).not.toMatch(/USD|[$€£]|\bmargin\b|\bprice\b/i);
  });

  it('would be caught if it did carry one', () => {
    expect(amountsIn('bought for 9,137.00', exampleAmounts)).not.toEqual([]);
    expect(amountsIn('core 73', exampleAmounts)).not.toEqual([]);
  });

  it('shows the vehicle: stock number, key tag, place, grouped VIN, drive, odometer', () => {
    expect(blocksOf(sheet, 'masthead')).toEqual([
      {
        kind: 'masthead',
        number: 'F-1042',
        name: '2019 Merrowick Hearth 2.0 Estate',
        tags: [
          { label: 'Key tag', value: '17' },
          { label: 'Where', value: 'Bay 3' },
        ],
      },
    ]);
    const facts = new Map(blocksOf(sheet, 'facts').flatMap(({ rows }) => rows.map((row) => [row.label, row.value])));
    expect(facts.get('VIN')).toBe('0LW 4BRHC6 KA010427');
    expect(facts.get('Drive')).toBe('hybrid');
    expect(facts.get('Odometer')).toBe('61,482 mi');
  });

  it('has the VIN in Code 39 and Data Matrix, and the stock number in Code 128', () => {
    expect(blocksOf(sheet, 'barcode').map(({ symbology, value }) => [symbology, value])).toEqual([
      ['code39', '0LW4BRHC6KA010427'],
      ['datamatrix', '0LW4BRHC6KA010427'],
      ['code128', 'F-1042'],
    ]);
  });

  it('has no bars for a VIN that is not known or a stock number that no code can hold', () => {
    const bare = { ...exampleVehicle, identity: { ...exampleVehicle.identity, vin: '', stockNumber: 'Ω-12' } };
    expect(blocksOf(sheetOf(bare), 'barcode')).toEqual([]);
    expect(sheetText(sheetOf(bare))).toContain('not known yet');
  });

  it('keeps the order: cautions, what must be in hand, faults, work, parts, codes, hours, room to write', () => {
    const wanted = [
      'Cautions for this vehicle',
      'In hand before you start',
      'Faults and decisions',
      'Work, in this order',
      'Repairs',
      'Program Body control module',
      'Prove it',
      'Parts',
      'Codes',
      'Hours',
      'What happened',
    ];
    expect(headings).toEqual(wanted);
    expect(sheet.blocks.slice(-2).map((block) => block.kind)).toEqual(['blank-lines', 'signatures']);
  });

  it('says of each part whether it is here, and of each code where it is kept', () => {
    expect(stepNamed('Body control module')?.detail).toContain('here since 13 Mar 2026');
    expect(stepNamed('Rear lamp, left')?.marks).toEqual([
      { text: 'Not here: ordered 9 Mar 2026, expected 20 Mar 2026', emphasis: 'strong' },
    ]);
    expect(stepNamed('Immobiliser code for Body control module')?.detail).toBe('Given; kept: office safe, envelope 31');
    expect(stepNamed('Radio code')?.marks[0]?.text).toContain('Not in hand: asked 16 Mar 2026');
    expect(stepNamed('Every key of the vehicle')?.detail).toBe('2 received · key tag 17');
  });

  it('leaves fitted parts out of what must be in hand', () => {
    const inHand = blocksOf(sheet, 'steps')[0]?.items.map((item) => item.text);
    expect(inHand).not.toContain('Number plate bulb × 2');
    expect(inHand).not.toContain('Number plate bulb');
  });

  it('gives every open step of a job a box in its order, ticks what is done, and says why a step is left out', () => {
    const job = blocksOf(sheet, 'steps').find((block) => block.items[0]?.text === 'Read and save the old module');
    expect(job?.items.map((item) => item.state)).toEqual(['done', 'open', 'open', 'open', 'open', 'left-out']);
    expect(job?.isNumbered && job.hasInitials).toBe(true);
    expect(job?.items[0]?.marks.map((mark) => mark.text)).toEqual([
      'failed 16 Mar 2026 · Tomáš Dvořáček · no answer on the bus',
      'worked 17 Mar 2026 · Tomáš Dvořáček · 13.5 / 13.3 / 13.4 V',
    ]);
    expect(job?.items[5]?.marks[0]?.text).toBe('Left out: no trailer socket on this vehicle.');
  });

  it('asks for volts where a step writes, and for the code where a step needs it', () => {
    const volts = ['volts before', 'lowest', 'after'];
    expect(stepNamed('Write the vehicle’s software')?.blanks).toEqual(volts);
    expect(stepNamed('Write the VIN')?.blanks).toEqual(['last eight of the VIN', ...volts]);
    expect(stepNamed('Learn every key')?.blanks).toEqual(['code']);
    expect(stepNamed('Fit the replacement')?.blanks).toEqual([]);
  });

  it('asks for volts at the first open step of a job whose steps name no writing', () => {
    const vehicle = makeVehicle('2026-03-02', {
      jobs: [
        makeJob('2026-03-05', {
          steps: [makeStep({ title: 'Fit the replacement', needsPart: true })],
        }),
      ],
    });
    const items = blocksOf(sheetOf(vehicle), 'steps').flatMap((block) => block.items);
    expect(items.find((item) => item.text === 'Fit the replacement')?.blanks).toEqual([
      'volts before',
      'lowest',
      'after',
    ]);
  });

  it('puts the cautions of a step beside it, and says what cannot be undone', () => {
    expect(stepNamed('Write the VIN')?.marks.map((mark) => mark.text)).toEqual([
      'Cannot be undone',
      'The VIN stays written',
      'Never interrupt a write',
    ]);
  });

  it('never holds a code: only its kind, how it stands, where it is kept, and a blank', () => {
    const table = blocksOf(sheet, 'table').find((block) => block.caption.startsWith('Code requests'));
    expect(table?.rowRoom).toBe('writing');
    expect(table?.rows.map((row) => row.map((cell) => cell.text))).toEqual([
      ['Immobiliser code', 'Body control module · 7731-0042-C', 'given; kept: office safe, envelope 31', ''],
      ['Radio code', 'Radio · R20-118834', 'asked 16 Mar 2026, expected 23 Mar 2026', ''],
    ]);
  });

  it('leaves out remarks that may hold what is not for the workshop: the vehicle’s notes', () => {
    expect(sheetText(sheet)).not.toContain('Seller wanted');
  });

  it('says what was decided of each fault, and marks what is not decided', () => {
    const table = blocksOf(sheet, 'table').find((block) => block.caption.startsWith('Faults'));
    expect(table?.rows.map((row) => row[3])).toEqual([
      { text: 'Replace', emphasis: 'none' },
      { text: 'Repair', emphasis: 'none' },
      { text: 'Replace', emphasis: 'none' },
      { text: 'Leave: polished; painting it would cost more than it is worth', emphasis: 'none' },
      { text: 'To decide', emphasis: 'strong' },
    ]);
  });

  it('sums the hours', () => {
    expect(sheetText(sheet)).toContain('Booked so far: 2 h 5 min; expected for the open repairs: 3 h 50 min.');
  });

  it('asks the technician for the scan after the repair and the technician’s own checks, not for the others’', () => {
    const proof = blocksOf(sheet, 'steps').find((block) => block.items[0]?.text.startsWith('Scan every module'));
    expect(proof?.items.map((item) => item.text)).toEqual([
      'Scan every module after the repair and keep the result',
      'Road test: brakes, steering, no lamp lit, no noise',
      'Safety check: lights, wipers, horn, belts, tyres, airbag lamp',
    ]);
  });

  it('defers to the maker’s information and the law on every page', () => {
    expect(sheet.footer).toBe(deferenceSentence);
  });

  it('says on every page of the sample that all is invented, and nothing of the kind elsewhere', () => {
    expect(sheet.sampleNotice).toContain('Invented');
    const real = jobSheet(
      exampleVehicle,
      reckonExample(exampleVehicle),
      { ...exampleShop, sample: null },
      examplePrinting,
    );
    expect(real.sampleNotice).toBe('');
  });

  it('stays short for a vehicle with nothing on it', () => {
    const empty = sheetOf(makeVehicle('2026-03-02'));
    const kinds = new Set(empty.blocks.map((block) => block.kind));
    expect(kinds.has('caution')).toBe(false);
    expect(kinds.has('table')).toBe(false);
    expect(sheetText(empty)).toContain('Not scanned yet');
  });

  it('names each module with what it is, whose order is followed, and that an order is not settled', () => {
    const job = makeJob('2026-03-05', { module: 'Gearbox', note: 'Ask for the fluid first.' });
    const makerOrder = {
      document: 'TX 12',
      readOn: '2026-03-04',
      ownSteps: [],
      sequence: [],
      pairs: [],
      accepted: [],
    };
    const contradictions = [
      { kind: 'cycle' as const, rules: [], steps: [], setAside: null, accepted: null, sentence: 'Round in a circle.' },
    ];
    const text = (about: Partial<typeof job>) =>
      sheetText(sheetOf(makeVehicle('2026-03-02', { jobs: [{ ...job, ...about }] })));
    expect(text({})).toContain('Gearbox: used unit. The maker’s own order comes before this one.');
    expect(text({})).toContain('Ask for the fluid first.');
    expect(text({ makerOrder })).toContain('Order after “TX 12”, read on 4 Mar 2026.');
    expect(text({})).not.toContain('not settled');
    expect(text({ plan: { ...job.plan, contradictions } })).toContain('The order is not settled');
  });

  it('names a refused code as refused and does not ask for it in hand', () => {
    const vehicle = makeVehicle('2026-03-02', {
      codeRequests: [
        makeCodeRequest('2026-03-05', { askedOn: '2026-03-05', answeredOn: '2026-03-09', outcome: 'refused' }),
      ],
      parts: [makePart('2026-03-05')],
    });
    const refused = sheetOf(vehicle);
    const inHand = blocksOf(refused, 'steps')[0]?.items.map((item) => item.text);
    expect(inHand).toEqual(['body module', 'Key']);
    expect(sheetText(refused)).toContain('refused 9 Mar 2026');
  });
});
