// The usual steps of programming: what must come before what, which cautions stand where, for every kind and origin of module.
import { describe, expect, it } from 'vitest';
import { moduleOriginSchema, programmingStepSchema } from '../../../app/domain/programming/programming-job.ts';
import { guessModuleKind, moduleKinds, standardSteps } from '../../../app/domain/programming/standard-steps.ts';
import { driveKindSchema } from '../../../app/domain/vehicle/identity.ts';

const situations = moduleKinds.flatMap((kind) =>
  moduleOriginSchema.options.flatMap((origin) => driveKindSchema.options.map((drive) => ({ kind, origin, drive }))),
);

/** One test over all of them; a failure names the situation. */
function inEverySituation(name: string, check: (situation: (typeof situations)[number]) => void): void {
  it(name, () => {
    for (const situation of situations) {
      try {
        check(situation);
      } catch (cause) {
        throw new Error(`In the situation ${JSON.stringify(situation)}`, { cause });
      }
    }
  });
}

function placeOf(situation: (typeof situations)[number], words: RegExp): number {
  return standardSteps(situation).findIndex((step) => words.test(step.title));
}

describe('standard steps', () => {
  inEverySituation('are steps that a job can keep', (situation) => {
    for (const step of standardSteps(situation))
      expect(() => programmingStepSchema.parse({ id: 'step-0001', ...step })).not.toThrow();
  });

  inEverySituation('begin with a scan and end after one', (situation) => {
    expect(placeOf(situation, /^Scan every module and keep/)).toBe(0);
    expect(placeOf(situation, /^Scan every module again/)).toBeGreaterThan(placeOf(situation, /^Clear the codes/));
  });

  inEverySituation('carry a steady supply and no interruption at every write', (situation) => {
    const writes = standardSteps(situation).filter((step) => /^(Write|Copy)/.test(step.title));
    for (const step of writes)
      expect(step.cautions).toEqual(expect.arrayContaining(['never-interrupt', 'supply-voltage']));
  });

  inEverySituation('warn of the airbags wherever an airbag module is fitted', (situation) => {
    const fit = standardSteps(situation).filter((step) => /fit the module/.test(step.title));
    expect(fit).toHaveLength(situation.origin === 'kept' ? 0 : 1);
    if (situation.kind === 'airbag') for (const step of fit) expect(step.cautions).toContain('airbag-battery');
  });

  inEverySituation('say that high voltage is for qualified people', (situation) => {
    const isAsked =
      situation.kind === 'high-voltage' || (situation.drive !== 'combustion' && situation.origin !== 'kept');
    expect(standardSteps(situation).some((step) => step.cautions.includes('high-voltage'))).toBe(isAsked);
  });

  inEverySituation('read the old module before a replacement is fitted', (situation) => {
    if (situation.origin === 'kept') {
      expect(placeOf(situation, /^Read and save/)).toBe(-1);
      return;
    }
    const read = placeOf(situation, /^Read and save/);
    expect(read).toBeGreaterThan(0);
    expect(placeOf(situation, /fit the module/)).toBeGreaterThan(read);
  });

  it('write the VIN only into a new or used module, and say that it stays', () => {
    for (const situation of situations) {
      const vin = standardSteps(situation).find((step) => step.title === 'Write the VIN');
      expect(vin !== undefined).toBe(situation.origin === 'new' || situation.origin === 'used');
      if (vin) expect(vin).toMatchObject({ cannotBeUndone: true, cautions: expect.arrayContaining(['vin-permanent']) });
    }
  });

  it('ask for a code where keys or a radio are matched, with the caution beside it', () => {
    for (const situation of situations)
      for (const step of standardSteps(situation))
        expect(step.needsCode).toBe(step.cautions.includes('anti-theft-code'));
    const bodyNew = standardSteps({ kind: 'body', origin: 'new', drive: 'combustion' });
    expect(bodyNew.filter((step) => step.needsCode)).toHaveLength(1);
  });
});

describe('the kind of a module', () => {
  it.each([
    ['Body control module', 'body'],
    ['BCM', 'body'],
    ['Immobiliser receiver', 'immobiliser'],
    ['Airbag control unit', 'airbag'],
    ['Instrument cluster', 'cluster'],
    ['Engine control module', 'engine'],
    ['Front radar', 'driver-assistance'],
    ['Brake control', 'chassis'],
    ['Radio', 'radio'],
    ['Traction inverter', 'high-voltage'],
    ['Seat heater', 'other'],
    ['', 'other'],
  ])('is guessed from its name: %s', (name, kind) => {
    expect(guessModuleKind(name)).toBe(kind);
  });
});
