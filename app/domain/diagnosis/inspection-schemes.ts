// How many incomplete monitors each inspection lets pass: data with its source and date beside each rule, so that a manager can see and
// edit it. No judgement here, and no claim to be the law of the day.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';
import { monitorNames } from './readiness-monitors.ts';

export const inspectionFuelSchema = z.enum(['petrol', 'diesel', 'hybrid', 'electric']);
export type InspectionFuel = z.infer<typeof inspectionFuelSchema>;

const modelYearSchema = z.int().min(1980).max(2100);

const allowanceSchema = z.discriminatedUnion('kind', [
  /** At most `most` incomplete monitors, whichever they are. */
  z.strictObject({ kind: z.literal('any'), most: z.int().min(0).max(8) }),
  /** Only the monitors named may be incomplete. */
  z.strictObject({ kind: z.literal('only'), monitors: z.array(z.enum(monitorNames)).max(8) }),
  /** The inspection does not look at monitors. */
  z.strictObject({ kind: z.literal('not-looked-at') }),
]);

export const inspectionRuleSchema = z.strictObject({
  fuels: z.array(inspectionFuelSchema).min(1),
  fromModelYear: modelYearSchema,
  /** Null: no end. */
  toModelYear: modelYearSchema.nullable(),
  allowance: allowanceSchema,
  source: filledLineSchema(240),
  /** The day or the year the source is dated, as it says. */
  sourceDated: filledLineSchema(40),
  remark: lineSchema(240),
});
export type InspectionRule = z.infer<typeof inspectionRuleSchema>;

export const inspectionSchemeSchema = z.strictObject({
  id: identifierSchema,
  name: filledLineSchema(80),
  rules: z.array(inspectionRuleSchema).max(40),
  /** From this model year on, any stored permanent code fails; null where the scheme does not look at them. */
  permanentCodes: z
    .strictObject({
      fromModelYear: modelYearSchema,
      /** Not applied once both are reached since the clear with the lamp off. */
      warmUps: z.int().min(0),
      distanceMiles: z.int().min(0),
      source: filledLineSchema(240),
      sourceDated: filledLineSchema(40),
    })
    .nullable(),
  /** When somebody in the shop last compared this with the rule itself; null: never. */
  checkedOn: daySchema.nullable(),
});
export type InspectionScheme = z.infer<typeof inspectionSchemeSchema>;

/** What the shop has of inspections: its schemes, and the one its vehicles are judged by; null while none is chosen. */
export const inspectionSettingsSchema = z.strictObject({
  chosenId: identifierSchema.nullable(),
  schemes: z.array(inspectionSchemeSchema).max(20),
});
export type InspectionSettings = z.infer<typeof inspectionSettingsSchema>;

export function chosenScheme({ chosenId, schemes }: InspectionSettings): InspectionScheme | null {
  return schemes.find((scheme) => scheme.id === chosenId) ?? null;
}

const epa = 'US EPA, EPA420-R-01-015, and 66 FR 18155; the figures from memory, agreeing with a state programme text';
const california = 'California BAR standard as summarised on two public pages';

/** The schemes the program starts with. A shop edits its own copy. */
export const inspectionSchemes: readonly InspectionScheme[] = [
  {
    id: 'us-federal-guidance',
    name: 'United States, federal guidance',
    rules: [
      {
        fuels: ['petrol', 'hybrid', 'diesel'],
        fromModelYear: 1996,
        toModelYear: 2000,
        allowance: { kind: 'any', most: 2 },
        source: epa,
        sourceDated: 'April and June 2001',
        remark: '',
      },
      {
        fuels: ['petrol', 'hybrid', 'diesel'],
        fromModelYear: 2001,
        toModelYear: null,
        allowance: { kind: 'any', most: 1 },
        source: epa,
        sourceDated: 'April and June 2001',
        remark: '',
      },
    ],
    permanentCodes: null,
    checkedOn: null,
  },
  {
    id: 'us-california',
    name: 'California',
    rules: [
      {
        fuels: ['petrol', 'hybrid'],
        fromModelYear: 1996,
        toModelYear: 1999,
        allowance: { kind: 'any', most: 1 },
        source: california,
        sourceDated: 'rule set since 2013',
        remark: '',
      },
      {
        fuels: ['petrol', 'hybrid'],
        fromModelYear: 2000,
        toModelYear: null,
        allowance: { kind: 'only', monitors: ['evaporative-system'] },
        source: california,
        sourceDated: 'rule set since 2013',
        remark: '',
      },
      {
        fuels: ['diesel'],
        fromModelYear: 1998,
        toModelYear: 2006,
        allowance: { kind: 'any', most: 0 },
        source: california,
        sourceDated: 'rule set since 2013',
        remark: '',
      },
      {
        fuels: ['diesel'],
        fromModelYear: 2007,
        toModelYear: null,
        allowance: { kind: 'only', monitors: ['particulate-filter', 'nmhc-catalyst'] },
        source: california,
        sourceDated: 'rule set since 2013',
        remark: 'Another summary says any two; the stricter reading is used.',
      },
    ],
    permanentCodes: {
      fromModelYear: 2010,
      warmUps: 15,
      distanceMiles: 200,
      source: 'California BAR newsletter, Spring 2019; the 15 warm-ups and 200 miles from trade pages',
      sourceDated: '1 July 2019',
    },
    checkedOn: null,
  },
  {
    id: 'gb-mot',
    name: 'Great Britain, MOT test',
    rules: [
      {
        fuels: ['petrol', 'hybrid'],
        fromModelYear: 2003,
        toModelYear: null,
        allowance: { kind: 'not-looked-at' },
        source: 'MOT inspection manual 8.2 as summarised by two garages; that monitors are not looked at from memory',
        sourceDated: 'undated',
        remark: 'The lamp is checked on petrol vehicles first used on or after 1 July 2003.',
      },
      {
        fuels: ['diesel'],
        fromModelYear: 2008,
        toModelYear: null,
        allowance: { kind: 'not-looked-at' },
        source: 'MOT inspection manual 8.2 as summarised by two garages; that monitors are not looked at from memory',
        sourceDated: 'undated',
        remark: 'The lamp is checked on diesel vehicles first used on or after 1 July 2008.',
      },
    ],
    permanentCodes: null,
    checkedOn: null,
  },
];
