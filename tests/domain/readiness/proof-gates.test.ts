// The gates that prove and present: what a post-repair scan and a signature vouch for, and what makes them stale.
import { describe, expect, it } from 'vitest';
import { plainCode, type Scan, type ScanCode, type ScanCodeStatus } from '../../../app/domain/diagnosis/scan.ts';
import type { Check } from '../../../app/domain/fleet/shop.ts';
import type { Gate } from '../../../app/domain/readiness/gate.ts';
import { judgeReadiness } from '../../../app/domain/readiness/gates.ts';
import { currentSignOff } from '../../../app/domain/readiness/proof-gates.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import {
  cleaned,
  makeAttempt,
  makeDecision,
  makeFault,
  makeJob,
  makeLabour,
  makePart,
  makeScan,
  makeSignOff,
  makeStep,
  makeSublet,
  makeVehicle,
  roadTest,
  stampAt,
} from '../../helpers/vehicle-maker.ts';

const first = '2026-02-02';
const second = '2026-02-03';
const third = '2026-02-04';
const fourth = '2026-02-05';

function gateOf(vehicle: Vehicle, key: string, checklist: readonly Check[] = [roadTest, cleaned]): Gate {
  const gate = judgeReadiness(vehicle, checklist).gates.find((candidate) => candidate.key === key);
  if (!gate) throw new Error(`No gate ${key}`);
  return gate;
}

const texts = (gate: Gate) => gate.items.map((item) => item.text);

function scanWith(code: string, status: ScanCodeStatus, kind: 'pre-repair' | 'post-repair' = 'post-repair') {
  return makeScan(third, {
    kind,
    modules: [{ name: 'Engine', answered: true, codes: [plainCode(code, status)] }],
  });
}

describe('the post-repair scan', () => {
  const worked = { labour: [makeLabour(second)] };

  it('is missing after work, and not needed when nothing was worked and every scan is clean', () => {
    const clean = makeVehicle(first, { scans: [makeScan(first)] });
    expect(gateOf(clean, 'post-scan').state).toBe('not-needed');
    const open = gateOf({ ...clean, ...worked }, 'post-scan');
    expect(open.state).toBe('open');
    expect(open.items[0]).toMatchObject({ who: 'technician', since: second, text: 'Post-repair scan is missing' });
    expect(gateOf(makeVehicle(first), 'post-scan').state).toBe('open');
    const dirty = makeVehicle(first, { scans: [scanWith('P0171', 'present', 'pre-repair')] });
    expect(gateOf(dirty, 'post-scan').state).toBe('open');
  });

  it('is met on its day when it is clean, and the latest counts', () => {
    const bad = { ...scanWith('P0171', 'present'), takenOn: second };
    const good = makeScan(third, { kind: 'post-repair' });
    expect(gateOf(makeVehicle(first, { ...worked, scans: [bad, good] }), 'post-scan')).toMatchObject({
      state: 'met',
      metOn: third,
    });
    const turned = { ...bad, takenOn: fourth };
    expect(gateOf(makeVehicle(first, { ...worked, scans: [turned, good] }), 'post-scan').state).toBe('open');
  });

  it.each<[ScanCodeStatus, string]>([
    ['present', 'open'],
    ['pending', 'open'],
    ['permanent', 'open'],
    ['unknown', 'open'],
    ['history', 'met'],
  ])('with a code that is %s is %s', (status, state) => {
    const gate = gateOf(makeVehicle(first, { ...worked, scans: [scanWith('P0171', status)] }), 'post-scan');
    expect(gate.state).toBe(state);
    if (state === 'open')
      expect(texts(gate)).toEqual([
        `After the repair: P0171 in Engine (${status}). Repair it, or decide to leave it with a reason`,
      ]);
  });

  it('may show what somebody decided to leave: the code with or without its failure type, but not another type', () => {
    const left = (codes: string[]) =>
      makeFault(first, { codes, decision: makeDecision(first, { kind: 'leave', reason: 'known, harmless' }) });
    const state = (codes: string[], seen: string) =>
      gateOf(makeVehicle(first, { ...worked, faults: [left(codes)], scans: [scanWith(seen, 'present')] }), 'post-scan')
        .state;
    expect(state(['P0171'], 'P0171')).toBe('met');
    expect(state(['u0140'], 'U0140-00')).toBe('met');
    expect(state(['U0140-00'], 'U0140-00')).toBe('met');
    expect(state(['U0140-00'], 'U0140-87')).toBe('open');
    expect(state(['P0172'], 'P0171')).toBe('open');
    const repaired = makeFault(first, { codes: ['P0171'], decision: makeDecision(first), doneOn: second });
    const scans = [scanWith('P0171', 'present')];
    expect(gateOf(makeVehicle(first, { ...worked, faults: [repaired], scans }), 'post-scan').state).toBe('open');
  });

  it('is open while a module is silent, unless its fault was left', () => {
    const scan = makeScan(third, { kind: 'post-repair', modules: [{ name: 'Radio', answered: false, codes: [] }] });
    const silent = makeVehicle(first, { ...worked, scans: [scan] });
    expect(texts(gateOf(silent, 'post-scan'))[0]).toContain('Radio does not answer');
    const left = makeFault(first, {
      module: ' radio',
      decision: makeDecision(first, { kind: 'leave', reason: 'sold without' }),
    });
    expect(gateOf({ ...silent, faults: [left] }, 'post-scan').state).toBe('met');
  });

  describe('holds a repaired code that is quiet without proof', () => {
    const evaporativeToRun: [number, number, number, number] = [0x00, 0x07, 0x65, 0x04];
    const allRun: [number, number, number, number] = [0x00, 0x07, 0x65, 0x00];
    const repaired = makeFault(first, { codes: ['P0442'], decision: makeDecision(first), doneOn: second });
    const arrival = makeScan(first, {
      modules: [
        { name: 'Engine', answered: true, codes: [plainCode('P0442', 'present'), plainCode('P0455', 'history')] },
      ],
    });
    const proofScan = (about: Partial<Scan> = {}, codes: readonly ScanCode[] = []) =>
      makeScan(third, {
        kind: 'post-repair',
        modules: [{ name: 'Engine', answered: true, codes: [...codes] }],
        ...about,
      });
    const gateWith = (...scans: readonly Scan[]) =>
      gateOf(makeVehicle(first, { ...worked, faults: [repaired], scans: [arrival, ...scans] }), 'post-scan');

    it('while the monitor that tests it has not run since the clear, and only that code', () => {
      const gate = gateWith(proofScan({ monitorBytes: evaporativeToRun }));
      expect(gate.state).toBe('open');
      expect(texts(gate)).toEqual([
        'P0442 in Engine: cleared, but not proven: its monitor (evaporative system) has not run since. Drive, then scan again',
      ]);
      expect(gateWith(proofScan({ monitorBytes: allRun })).state).toBe('met');
    });

    it('not where nobody read the monitors: that it is gone is then all that is known', () => {
      expect(gateWith(proofScan()).state).toBe('met');
    });

    it('while the module itself says that its test has not run', () => {
      const untested = { ...plainCode('P0442', 'unknown'), statusByte: 0x50, isUnproven: true };
      expect(texts(gateWith(proofScan({}, [untested])))).toEqual([
        'P0442 in Engine: cleared, but not proven: its test has not run since. Drive, then scan again',
      ]);
      const passed = { ...plainCode('P0442', 'unknown'), statusByte: 0x40 };
      expect(gateWith(proofScan({}, [passed])).state).toBe('met');
    });

    it('but no code that was never repaired, however many tests are still to run', () => {
      const untested = { ...plainCode('P0301', 'unknown'), statusByte: 0x50, isUnproven: true };
      expect(gateWith(proofScan({ monitorBytes: allRun }, [untested])).state).toBe('met');
    });

    it('while its module is not in the scan at all', () => {
      const elsewhere = proofScan({ modules: [{ name: 'Body', answered: true, codes: [] }] });
      expect(texts(gateWith(elsewhere))).toEqual([
        'P0442 was repaired, but Engine is not in the scan after it. Scan that module too',
      ]);
    });

    it('not once a scan in between has proven it, until it is listed again', () => {
      const proving = {
        ...proofScan({ monitorBytes: allRun }),
        takenOn: second,
        kind: 'in-between' as const,
        entered: stampAt(second),
      };
      expect(gateWith(proving, proofScan({ monitorBytes: evaporativeToRun })).state).toBe('met');
      const back = { ...proving, id: 'scan-back', modules: arrival.modules, monitorBytes: null };
      const later = { ...back, entered: stampAt(second, 18) };
      expect(gateWith(proving, later, proofScan({ monitorBytes: evaporativeToRun })).state).toBe('open');
    });

    it('not when it was decided to leave it', () => {
      const left = makeFault(first, {
        codes: ['P0442'],
        decision: makeDecision(first, { kind: 'leave', reason: 'told' }),
      });
      const scans = [arrival, proofScan({ monitorBytes: evaporativeToRun })];
      expect(gateOf(makeVehicle(first, { ...worked, faults: [left], scans }), 'post-scan').state).toBe('met');
    });
  });

  it.each([
    ['engine', 'stale'],
    ['control-module', 'stale'],
    ['brakes', 'stale'],
    ['interior', 'met'],
    ['body', 'met'],
  ] as const)('after later work on %s is %s', (area, state) => {
    const vehicle = makeVehicle(first, {
      scans: [makeScan(second, { kind: 'post-repair' })],
      labour: [makeLabour(third, { area, what: 'later work' })],
    });
    const gate = gateOf(vehicle, 'post-scan');
    expect(gate.state).toBe(state);
    if (state === 'stale')
      expect(gate.items).toMatchObject([
        { text: 'Scan again: later work on 2026-02-04 came after the scan of 2026-02-03', since: third },
      ]);
  });
});

describe('a signature', () => {
  const key = `check:${roadTest.id}`;
  const brakes = (on: string, hour: number) =>
    makeLabour(on, { area: 'brakes', what: 'brake pads', entered: stampAt(on, hour) });
  const signed = (on: string, hour = 12) => makeSignOff(on, roadTest.id, { entered: stampAt(on, hour) });

  it('is missing, is the move of whom the check names, and is met when it is passed', () => {
    const gate = gateOf(makeVehicle(first), 'check:cleaned');
    expect(gate.items).toMatchObject([{ text: 'Not signed: Cleaned', who: 'sales', since: null }]);
    expect(gateOf(makeVehicle(first, { signOffs: [signed(second)] }), key)).toMatchObject({
      state: 'met',
      metOn: second,
    });
  });

  it('that failed keeps the gate open with its note, until a later one passes', () => {
    const failed = makeSignOff(second, roadTest.id, { result: 'failed', note: 'pulls to the left' });
    const vehicle = makeVehicle(first, { signOffs: [failed] });
    expect(gateOf(vehicle, key)).toMatchObject({
      state: 'open',
      items: [{ text: 'Failed on 2026-02-03: Road test (pulls to the left)', since: second }],
    });
    expect(gateOf({ ...vehicle, signOffs: [signed(third), failed] }, key).state).toBe('met');
  });

  it('entered later counts where two are of the same day', () => {
    const failed = makeSignOff(second, roadTest.id, { result: 'failed', entered: stampAt(second, 16) });
    const vehicle = makeVehicle(first, { signOffs: [failed, signed(second, 9)] });
    expect(currentSignOff(vehicle, roadTest.id)?.result).toBe('failed');
    expect(gateOf(vehicle, key).state).toBe('open');
    expect(gateOf({ ...vehicle, signOffs: [failed, signed(second, 17)] }, key).state).toBe('met');
  });

  it('that says not needed never goes stale', () => {
    const waived = makeSignOff(second, roadTest.id, { result: 'not-needed' });
    const gate = gateOf(makeVehicle(first, { signOffs: [waived], labour: [brakes(fourth, 9)] }), key);
    expect(gate).toMatchObject({ state: 'not-needed', items: [] });
  });

  it('goes stale after later work that touches what it vouches for, and only then', () => {
    const vehicle = makeVehicle(first, { signOffs: [signed(second)] });
    expect(gateOf({ ...vehicle, labour: [brakes(third, 9)] }, key)).toMatchObject({
      state: 'stale',
      metOn: null,
      items: [
        {
          text: 'Sign again: Road test. brake pads on 2026-02-04 came after the signature of 2026-02-03',
          since: third,
        },
      ],
    });
    const carpet = makeLabour(third, { area: 'interior', what: 'carpet' });
    expect(gateOf({ ...vehicle, labour: [carpet] }, key).state).toBe('met');
    expect(gateOf({ ...vehicle, labour: [brakes(first, 9)] }, key).state).toBe('met');
    expect(
      gateOf({ ...vehicle, labour: [brakes(third, 9)], signOffs: [signed(second), signed(fourth)] }, key).state,
    ).toBe('met');
  });

  it('of the same day goes stale by work entered after it, and not by work entered before', () => {
    const vehicle = makeVehicle(first, { signOffs: [signed(second, 14)] });
    expect(gateOf({ ...vehicle, labour: [brakes(second, 13)] }, key).state).toBe('met');
    expect(gateOf({ ...vehicle, labour: [brakes(second, 15)] }, key).state).toBe('stale');
  });

  it('goes stale by a part fitted, sublet work back or a fault finished on a later day, not by one of the same day', () => {
    const fault = makeFault(first, { area: 'brakes', decision: makeDecision(first) });
    const later = (on: string): readonly Partial<Vehicle>[] => [
      { parts: [makePart(first, { faultId: fault.id, orderedOn: first, receivedOn: first, fittedOn: on })] },
      { sublets: [makeSublet(first, { area: 'steering-suspension', sentOn: first, backOn: on })] },
      { faults: [{ ...fault, doneOn: on }] },
    ];
    const vehicle = makeVehicle(first, { signOffs: [signed(second)], faults: [fault] });
    for (const facts of later(third)) expect(gateOf({ ...vehicle, ...facts }, key).state).toBe('stale');
    for (const facts of later(second)) expect(gateOf({ ...vehicle, ...facts }, key).state).toBe('met');
  });

  it('goes stale by a programming attempt where its check minds electrical work', () => {
    const step = makeStep();
    const job = makeJob(first, { steps: [step] });
    const vehicle = makeVehicle(first, {
      signOffs: [signed(second)],
      jobs: [job],
      attempts: [makeAttempt(third, job, step.id)],
    });
    expect(gateOf(vehicle, key).state).toBe('met');
    const minds: Check = { ...roadTest, staleAfter: ['electrical'] };
    const gate = gateOf(vehicle, key, [minds]);
    expect(gate.state).toBe('stale');
    expect(texts(gate)[0]).toContain('programming attempt on Body');
  });
});

describe('the checklist', () => {
  it('leaves out checks that are not active and takes each in its stage', () => {
    const inactive: Check = { ...roadTest, isActive: false };
    const keys = judgeReadiness(makeVehicle(first), [inactive, cleaned]).gates.map((gate) => gate.key);
    expect(keys).not.toContain('check:road-test');
    const all = judgeReadiness(makeVehicle(first), [cleaned, roadTest]).gates.map((gate) => gate.key);
    expect(all.slice(-5)).toEqual(['post-scan', 'check:road-test', 'check:cleaned', 'price', 'paper']);
  });
});

describe('price and paper', () => {
  it('hold while they are missing and are the manager’s', () => {
    const without = makeVehicle(first, { targets: { askingCents: null } });
    expect(gateOf(without, 'price').items).toMatchObject([{ text: 'Asking price is missing', who: 'manager' }]);
    expect(gateOf(makeVehicle(first), 'price').state).toBe('met');
    const late = makeVehicle(first, { purchase: { paperReceivedOn: null, paperExpectedOn: fourth } });
    expect(gateOf(late, 'paper').items).toMatchObject([
      { text: 'Title has not come, expected on 2026-02-05', who: 'manager', since: first },
    ]);
    expect(gateOf(makeVehicle(first), 'paper')).toMatchObject({ state: 'met', metOn: first });
  });
});

describe('the days of the stages', () => {
  const vehicle = makeVehicle(first, {
    purchase: { paperReceivedOn: first },
    scans: [makeScan(first), makeScan(third, { kind: 'post-repair' })],
    faults: [makeFault(first, { decision: makeDecision(first), doneOn: second })],
    signOffs: [makeSignOff(third, roadTest.id), makeSignOff(fourth, cleaned.id)],
  });

  it('are those on which their last gate was met', () => {
    expect(judgeReadiness(vehicle, [roadTest, cleaned])).toMatchObject({
      workFinishedOn: second,
      verifiedOn: third,
      presentedOn: fourth,
      readyOn: fourth,
      isReady: true,
    });
  });

  it('never come before the stage before them, though cleaning was signed first', () => {
    const early = { ...vehicle, signOffs: [makeSignOff(third, roadTest.id), makeSignOff(second, cleaned.id)] };
    expect(judgeReadiness(early, [roadTest, cleaned])).toMatchObject({ verifiedOn: third, presentedOn: third });
  });

  it('wait for the paper at the end', () => {
    const paperless = { ...vehicle, purchase: { ...vehicle.purchase, paperReceivedOn: null } };
    expect(judgeReadiness(paperless, [roadTest, cleaned])).toMatchObject({
      presentedOn: fourth,
      readyOn: null,
      isReady: false,
    });
  });
});
