// The rule pack that the program comes with. A shop edits a copy of it in Setup; this one stays as it is.
import { generalReminders, generalRules } from './general-pack-rules.ts';
import { exchangeSteps } from './general-steps-exchange.ts';
import { matchSteps } from './general-steps-match.ts';
import { proveSteps } from './general-steps-prove.ts';
import { secureSteps } from './general-steps-secure.ts';
import { writeSteps } from './general-steps-write.ts';
import type { RulePack } from './rule-pack.ts';

export const generalPack: RulePack = {
  id: 'general',
  name: 'General order of programming',
  version: 1,
  changedOn: '2026-01-05',
  note: 'Common practice of the trade, for no make in particular. The maker’s service information comes before it.',
  steps: [...secureSteps, ...exchangeSteps, ...writeSteps, ...matchSteps, ...proveSteps],
  rules: [...generalRules],
  reminders: [...generalReminders],
};
