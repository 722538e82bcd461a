// The channels of the vault for codes. Which of their fields carry a secret stands in secret-inputs.ts.
import { z } from 'zod';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { filledLineSchema, lineSchema } from '../domain/shared/text.ts';
import { secretTextSchema } from './secret-inputs.ts';
import { keptCodesSchema, keyChangeSchema, newRecoverySchema, seenCodeSchema, vaultStateSchema } from './vault-view.ts';

const manager = ['manager'] as const;
const workshop = ['manager', 'technician'] as const;
const nothing = z.strictObject({});
const code = { vehicleId: identifierSchema, requestId: identifierSchema };
const withPassPhrase = z.strictObject({ passPhrase: secretTextSchema });

export const vaultChannels = {
  'vault:state': { input: nothing, output: vaultStateSchema, roles: workshop, mutates: false },
  'vault:make': { input: withPassPhrase, output: newRecoverySchema, roles: manager, mutates: true },
  'vault:unlock': { input: withPassPhrase, output: vaultStateSchema, roles: workshop, mutates: true },
  'vault:lock': { input: nothing, output: vaultStateSchema, roles: workshop, mutates: true },
  /** Whether a code is kept for each request of a vehicle, and every look at it. */
  'vault:codes': {
    input: z.strictObject({ vehicleId: identifierSchema }),
    output: keptCodesSchema,
    roles: workshop,
    mutates: false,
  },
  'vault:put-code': {
    input: z.strictObject({
      ...code,
      value: secretTextSchema,
      /** Why a value that does not look as usual is kept all the same. */
      keptBecause: lineSchema(200),
      /** A code that is kept already is given up for this one. */
      replaces: z.boolean(),
    }),
    output: keptCodesSchema,
    roles: workshop,
    mutates: true,
  },
  'vault:look': {
    input: z.strictObject({
      ...code,
      why: filledLineSchema(200),
      /** The step it is needed for; null: for what `why` says. */
      step: z.strictObject({ jobId: identifierSchema, stepId: z.string().max(100) }).nullable(),
      /** To tell the buyer, after the sale. */
      isHandOver: z.boolean(),
    }),
    output: seenCodeSchema,
    roles: workshop,
    mutates: true,
  },
  /** The page shows it no more: another one may be looked at. */
  'vault:hide': { input: nothing, output: nothing, roles: workshop, mutates: true },
  /** Puts the code that is shown now on the system's clipboard, which is cleared again. */
  'vault:copy': { input: z.strictObject(code), output: nothing, roles: workshop, mutates: true },
  'vault:destroy': {
    input: z.strictObject({ ...code, why: filledLineSchema(200) }),
    output: keptCodesSchema,
    roles: manager,
    mutates: true,
  },
  'vault:add-person': {
    input: z.strictObject({ personId: identifierSchema, passPhrase: secretTextSchema }),
    output: vaultStateSchema,
    roles: manager,
    mutates: true,
  },
  'vault:remove-person': {
    input: z.strictObject({ personId: identifierSchema }),
    output: keyChangeSchema,
    roles: manager,
    mutates: true,
  },
  'vault:change-pass-phrase': {
    input: z.strictObject({ oldPassPhrase: secretTextSchema, newPassPhrase: secretTextSchema }),
    output: keyChangeSchema,
    roles: workshop,
    mutates: true,
  },
  'vault:recover': {
    input: z.strictObject({ recoveryKey: secretTextSchema, passPhrase: secretTextSchema }),
    output: newRecoverySchema,
    roles: manager,
    mutates: true,
  },
  'vault:new-recovery-key': { input: nothing, output: newRecoverySchema, roles: manager, mutates: true },
  /** After the vault could not be read and no copy of it is to be had: it stays in quarantine, and a new one may be made. */
  'vault:start-anew': { input: nothing, output: vaultStateSchema, roles: manager, mutates: true },
} as const;
