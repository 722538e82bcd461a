// Inspection monitors against published readings and the figures of the inspection rules. Each check names its source.
import { describe, expect, it } from 'vitest';
import { inspectionSchemes } from '../../app/domain/diagnosis/inspection-schemes.ts';
import { judgeMonitors } from '../../app/domain/diagnosis/judge-monitors.ts';
import { type MonitorName, type MonitorReading, readMonitors } from '../../app/domain/diagnosis/readiness-monitors.ts';

const read = (text: string): MonitorReading => {
  const reading = readMonitors(text.split(' ').map((one) => Number.parseInt(one, 16)));
  if (reading === null) throw new Error(`Not four bytes: ${text}`);
  return reading;
};
const scheme = (id: string) => {
  const found = inspectionSchemes.find((one) => one.id === id);
  if (found === undefined) throw new Error(`No scheme ${id}`);
  return found;
};

type Row = readonly [text: string, lamp: boolean, codes: number, incomplete: readonly MonitorName[], source: string];
const readings: readonly Row[] = [
  [
    '81 07 6D 6D',
    true,
    1,
    ['catalyst', 'evaporative-system', 'secondary-air', 'oxygen-sensor', 'oxygen-sensor-heater'],
    'a maker’s 1999 workshop text',
  ],
  ['81 07 65 04', true, 1, ['evaporative-system'], 'a widely reprinted example, from memory'],
  ['00 07 E5 00', false, 0, [], 'computed'],
  [
    '00 77 65 65',
    false,
    0,
    ['misfire', 'fuel-system', 'components', 'catalyst', 'evaporative-system', 'oxygen-sensor', 'oxygen-sensor-heater'],
    'computed: just cleared',
  ],
  ['00 07 00 FF', false, 0, [], 'computed: byte D counts only where byte C has the bit'],
];

describe('service 01 PID 01 (SAE J1979 / ISO 15031-5)', () => {
  it.each(readings)(
    '%s: lamp %s, %i codes, incomplete %j (%s)',
    (text, isLampCommanded, confirmedCodeCount, incomplete) => {
      expect(read(text)).toMatchObject({
        isLampCommanded,
        confirmedCodeCount,
        ignition: 'spark',
        incomplete,
        warnings: [],
      });
      expect(read(text).isReady).toBe(incomplete.length === 0);
    },
  );

  it('has four incomplete monitors that are not continuous just after a clear (00 77 65 65, computed)', () => {
    expect(read('00 77 65 65').monitors.filter((one) => !one.isComplete && !one.isContinuous)).toHaveLength(4);
  });

  it('is ready where nothing but the continuous monitors is supported (00 07 00 FF, computed)', () => {
    expect(read('00 07 00 FF')).toMatchObject({ isReady: true });
    expect(read('00 07 00 FF').monitors.map((one) => one.name)).toEqual(['misfire', 'fuel-system', 'components']);
  });

  // The positions as three independent public decoders give them.
  it.each([
    [
      'spark',
      '00 00',
      [
        'catalyst',
        'heated-catalyst',
        'evaporative-system',
        'secondary-air',
        'air-conditioning-or-particulate-filter',
        'oxygen-sensor',
        'oxygen-sensor-heater',
        'exhaust-gas-recirculation',
      ],
    ],
    [
      'compression',
      '00 08',
      [
        'nmhc-catalyst',
        'nox-aftertreatment',
        null,
        'boost-pressure',
        null,
        'exhaust-gas-sensor',
        'particulate-filter',
        'exhaust-gas-recirculation',
      ],
    ],
  ] as const)('names the bits of bytes C and D on %s ignition', (ignition, start, names) => {
    for (const [bit, name] of names.entries()) {
      const mask = (1 << bit).toString(16).padStart(2, '0');
      const reading = read(`${start} ${mask} ${mask}`);
      expect(reading.ignition).toBe(ignition);
      expect(reading.incomplete).toEqual(name === null ? [] : [name]);
      expect(reading.warnings).toHaveLength(name === null ? 1 : 0);
    }
  });
});

// Readings with exactly the monitors wanted incomplete: C supports catalyst, evaporative system, oxygen sensor and its heater.
const none = '00 07 65 00';
const evapOnly = '00 07 65 04';
const catalystOnly = '00 07 65 01';
const oxygenOnly = '00 07 65 20';
const two = '00 07 65 21';
const three = '00 07 65 25';
const dieselNone = '00 0F 6B 00';
const dieselOne = '00 0F 6B 01';

describe('decisions (US EPA guidance, EPA420-R-01-015; California BAR standard as summarised publicly; values computed)', () => {
  it.each([
    [1999, 'petrol', two, 'passes', 'fails'],
    [2000, 'petrol', two, 'passes', 'fails'],
    [2001, 'petrol', two, 'fails', 'fails'],
    [2000, 'petrol', three, 'fails', 'fails'],
    [2005, 'petrol', evapOnly, 'passes', 'passes'],
    [2005, 'petrol', catalystOnly, 'passes', 'fails'],
    [2000, 'petrol', oxygenOnly, 'passes', 'fails'],
    [1999, 'petrol', oxygenOnly, 'passes', 'passes'],
    [2015, 'petrol', none, 'passes', 'passes'],
    [2006, 'diesel', dieselOne, 'passes', 'fails'],
    [2006, 'diesel', dieselNone, 'passes', 'passes'],
    [2012, 'diesel', dieselOne, 'passes', 'passes'],
    [2012, 'diesel', '00 0F 6B 02', 'passes', 'fails'],
    [2012, 'diesel', '00 0F 6B 41', 'fails', 'passes'],
  ] as const)(
    'model year %i %s with %s: federal guidance %s, California %s',
    (modelYear, fuel, text, federal, california) => {
      const judge = (id: string) => judgeMonitors(read(text), { scheme: scheme(id), modelYear, fuel }).verdict;
      expect(judge('us-federal-guidance')).toBe(federal);
      expect(judge('us-california')).toBe(california);
    },
  );

  it('fails a commanded lamp everywhere, whatever the monitors say (40 CFR 85.2207; 16 CCR 3340.42.2(c); MOT manual 8.2)', () => {
    for (const one of inspectionSchemes) {
      for (const modelYear of [1990, 1999, 2005, 2020]) {
        const judgement = judgeMonitors(read('81 07 65 00'), { scheme: one, modelYear, fuel: 'petrol' });
        expect(judgement.verdict).toBe('fails');
      }
    }
  });

  it('does not look at monitors in the MOT test (from memory)', () => {
    const judgement = judgeMonitors(read(three), { scheme: scheme('gb-mot'), modelYear: 2012, fuel: 'petrol' });
    expect(judgement.verdict).toBe('passes');
  });

  it('does not count the continuous monitors', () => {
    const judgement = judgeMonitors(read('00 77 65 04'), {
      scheme: scheme('us-federal-guidance'),
      modelYear: 2010,
      fuel: 'petrol',
    });
    expect(judgement).toMatchObject({ verdict: 'passes', counted: ['evaporative-system'] });
  });

  // California BAR newsletter, Spring 2019 (any permanent code fails from model year 2010); 15 warm-ups and 200 miles from trade pages.
  it.each([
    [2009, 1, 0, 0, 'passes'],
    [2010, 0, 0, 0, 'passes'],
    [2010, 1, 0, 0, 'fails'],
    [2010, 1, 15, 199, 'fails'],
    [2010, 1, 14, 200, 'fails'],
    [2010, 1, 15, 200, 'passes'],
  ] as const)(
    'California, model year %i, %i permanent codes, %i warm-ups and %i miles: %s',
    (modelYear, count, warmUps, miles, verdict) => {
      const judgement = judgeMonitors(read(none), {
        scheme: scheme('us-california'),
        modelYear,
        fuel: 'petrol',
        permanentCodeCount: count,
        warmUpsSinceClear: warmUps,
        milesSinceClear: miles,
      });
      expect(judgement.verdict).toBe(verdict);
    },
  );
});
