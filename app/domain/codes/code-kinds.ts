// The kinds of unlock code as data: what a request must carry, how codes and serials usually look. The shop can change and add kinds.
// Holds no code and judges none: the checks are in code-form.ts.
import { z } from 'zod';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';

/** What a request of this kind must carry, apart from the proof of ownership, which every request must carry. */
export const requestNeedSchema = z.enum(['vin', 'device-serial', 'module', 'reason']);
export type RequestNeed = z.infer<typeof requestNeedSchema>;

const charactersSchema = z.enum(['digits', 'letters-and-digits']);
export type FormCharacters = z.infer<typeof charactersSchema>;

export const codeFormSchema = z.strictObject({
  characters: charactersSchema,
  /** Usual numbers of characters. */
  lengths: z.array(z.int().min(1).max(64)).min(1).max(8),
});
export type CodeForm = z.infer<typeof codeFormSchema>;

const modelYearSchema = z.int().min(1900).max(2199).nullable();

export const serialFormSchema = z.strictObject({
  /** First and last model year it is usual for; null where there is no such limit. */
  fromModelYear: modelYearSchema,
  toModelYear: modelYearSchema,
  beginsWith: z.string().regex(/^[A-Z0-9]{0,12}$/, 'Capital letters and digits, at most 12.'),
  characters: charactersSchema,
  /** Null where it is not known. */
  length: z.int().min(1).max(64).nullable(),
});
export type SerialForm = z.infer<typeof serialFormSchema>;

export const codeKindFactsSchema = z.strictObject({
  id: identifierSchema,
  name: filledLineSchema(60),
  needs: z.array(requestNeedSchema).max(4),
  /** Null where there is no usual form. */
  codeForm: codeFormSchema.nullable(),
  /** Any one of those that hold for the model year may fit; none: nothing is known about the serial. */
  serialForms: z.array(serialFormSchema).max(12),
  /** Wrong codes taken before the device locks; null where not known. */
  triesAllowed: z.int().min(1).max(99).nullable(),
  lockOutMinutes: z.int().min(1).max(100_000).nullable(),
  /** What a person should know before asking or trying, in a line. */
  advice: lineSchema(240),
  source: filledLineSchema(160),
  isActive: z.boolean(),
});
export type CodeKindFacts = z.infer<typeof codeKindFactsSchema>;

export const codeKindsSchema = z
  .array(codeKindFactsSchema)
  .min(1)
  .max(40)
  .refine((kinds) => new Set(kinds.map((kind) => kind.id)).size === kinds.length, 'Two kinds have the same identity.');

const practice = 'common practice, no source';
const serialUsual = { characters: 'letters-and-digits', length: 14 } as const;

/** What every shop starts with. All of it may be edited. */
export const shippedCodeKinds: readonly CodeKindFacts[] = [
  {
    id: 'immobiliser',
    name: 'Immobiliser code',
    needs: ['vin'],
    // What an independent tool reads out of the vehicle.
    codeForm: { characters: 'digits', lengths: [5] },
    serialForms: [],
    triesAllowed: null,
    lockOutMinutes: null,
    advice: 'It does not open the radio: that has a code of its own. Most units count wrong codes and then lock.',
    source: practice,
    isActive: true,
  },
  {
    id: 'radio',
    name: 'Radio code',
    needs: ['vin', 'device-serial'],
    codeForm: { characters: 'digits', lengths: [4] },
    serialForms: [
      { fromModelYear: null, toModelYear: 2012, beginsWith: 'T', ...serialUsual },
      { fromModelYear: 2013, toModelYear: null, beginsWith: 'A2C', ...serialUsual },
    ],
    triesAllowed: null,
    lockOutMinutes: null,
    advice: 'It belongs to this radio, not to the vehicle: read the serial off the radio that is fitted now.',
    source: practice,
    isActive: true,
  },
  {
    id: 'mechanical-key',
    name: 'Mechanical key code',
    needs: ['vin'],
    codeForm: null,
    serialForms: [],
    triesAllowed: null,
    lockOutMinutes: null,
    advice: 'For cutting a blade. The chip in the key is taught separately.',
    source: practice,
    isActive: true,
  },
  {
    id: 'gateway',
    name: 'Gateway access',
    needs: ['vin', 'module'],
    codeForm: null,
    serialForms: [],
    triesAllowed: null,
    lockOutMinutes: null,
    advice: 'Often given to a person with a credential, not to a vehicle: note whose it is.',
    source: practice,
    isActive: true,
  },
  {
    id: 'other',
    name: 'Other code',
    needs: ['vin', 'module', 'reason'],
    codeForm: null,
    serialForms: [],
    triesAllowed: null,
    lockOutMinutes: null,
    advice: '',
    source: practice,
    isActive: true,
  },
];
