// What can be required before a step: a closed list, what each says to the person, and whether a named person may go past it.
import { z } from 'zod';

export const gateKindSchema = z.enum([
  'codes-recorded',
  'old-module-saved',
  'part-in-hand',
  'used-module-fits',
  'code-in-hand',
  'ownership-proven',
  'keys-present',
  'vins-compared',
  'negative-lead-off',
  'airbag-wait-over',
  'high-voltage-safe',
  'supply-connected',
  'replacement-proven',
]);
export type GateKind = z.infer<typeof gateKindSchema>;

export type Gate = {
  /** 'module': asked for each module by itself. 'job': one answer for the whole vehicle. */
  readonly scope: 'job' | 'module';
  /** What is missing and what to do; `{module}` stands for the module's name. */
  readonly missing: string;
  /** False where going on regardless could injure somebody or break the law on anti-theft data. */
  readonly mayBeOverridden: boolean;
  /** True for what is only asked in a job that has a step for it: no high-voltage module, no release to wait for. */
  readonly onlyWithStep: boolean;
};

export const gates: Readonly<Record<GateKind, Gate>> = {
  'codes-recorded': {
    scope: 'job',
    missing: 'The codes on arrival are not on record. Scan every module first.',
    mayBeOverridden: true,
    onlyWithStep: false,
  },
  'old-module-saved': {
    scope: 'module',
    missing: 'The data of the old {module} is not saved. Read it first, by the next route if one fails.',
    mayBeOverridden: true,
    onlyWithStep: false,
  },
  'part-in-hand': {
    scope: 'module',
    missing: 'The replacement for {module} is not here. Note it as received when it is.',
    mayBeOverridden: true,
    onlyWithStep: false,
  },
  'used-module-fits': {
    scope: 'module',
    missing: 'Nobody has found out yet whether the used {module} can be matched to this vehicle.',
    mayBeOverridden: true,
    onlyWithStep: true,
  },
  'code-in-hand': {
    scope: 'module',
    missing: 'The code for {module} is not in hand. Ask for it, and begin only when it is here.',
    mayBeOverridden: true,
    onlyWithStep: false,
  },
  'ownership-proven': {
    scope: 'job',
    missing: 'No proof of ownership has been checked. Anti-theft work is only for a vehicle that the dealer owns.',
    mayBeOverridden: false,
    onlyWithStep: false,
  },
  'keys-present': {
    scope: 'job',
    missing: 'Not every key that belongs to the vehicle is here. A key that is missing now may stop working.',
    mayBeOverridden: true,
    onlyWithStep: false,
  },
  'vins-compared': {
    scope: 'job',
    missing: 'The VINs have not been compared. A VIN that is written stays written: compare first.',
    mayBeOverridden: true,
    onlyWithStep: false,
  },
  'negative-lead-off': {
    scope: 'job',
    missing: 'The negative battery lead is not off. Take it off before a module is unplugged.',
    mayBeOverridden: true,
    onlyWithStep: false,
  },
  'airbag-wait-over': {
    scope: 'job',
    missing: 'The wait after the battery was taken off is not over. Wait as long as the maker says: airbags can fire.',
    mayBeOverridden: false,
    onlyWithStep: true,
  },
  'high-voltage-safe': {
    scope: 'job',
    missing: 'Nobody qualified has released the high-voltage system in writing. Keep away from it until then.',
    mayBeOverridden: false,
    onlyWithStep: true,
  },
  'supply-connected': {
    scope: 'job',
    missing: 'The supply is not connected. Connect it at the maker’s voltage and write down the volts.',
    mayBeOverridden: true,
    onlyWithStep: false,
  },
  'replacement-proven': {
    scope: 'module',
    missing: 'The new {module} is not proven yet. Keep the old one until it is.',
    mayBeOverridden: true,
    onlyWithStep: false,
  },
};
