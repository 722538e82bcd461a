// Scans as the sample's stories write them: 'Body: silent', 'Cluster: U0140 present'. Turns them into the record's form.

import { plainCode, type ScanModule, scanCodeStatusSchema } from '../../domain/diagnosis/scan.ts';
import { findTroubleCodes } from '../../domain/diagnosis/scanner-text.ts';

/** Short words of our own for the codes the stories use; the official descriptions are not copied. */
const words: Readonly<Record<string, string>> = {
  P0171: 'mixture too lean, bank 1',
  P0300: 'misfires, no single cylinder',
  P0302: 'misfires, cylinder 2',
  P0420: 'catalyst below its limit, bank 1',
  P0442: 'small leak in the fuel vapour system',
  P0513: 'key not the right one for the immobiliser',
  P0562: 'supply voltage low',
  P062F: 'engine module: memory fault inside',
  P0633: 'engine module: key not programmed',
  P0700: 'transmission asks for the lamp',
  P0841: 'transmission fluid pressure out of range',
  P0A80: 'hybrid battery pack worn or faulty',
  P0AA6: 'high-voltage insulation fault',
  P1D7A: 'on-board charger, maker’s own code',
  B0001: 'driver airbag, first stage circuit',
  B0100: 'front crash sensor, first',
  B1342: 'body module: memory fault inside',
  C0035: 'left front wheel speed sensor',
  U0100: 'no messages from the engine module',
  U0140: 'no messages from the body control module',
  U0151: 'no messages from the airbag module',
  U0155: 'no messages from the instrument cluster',
  U0184: 'no messages from the radio',
  U3003: 'battery voltage',
};

/** 'Engine: P0171 present, P0300 history', 'Body: silent', 'Radio' (answers, no codes). */
export function scanModule(text: string): ScanModule {
  const [name = '', found = ''] = text.split(': ');
  if (found === 'silent') return { name, answered: false, codes: [] };
  const codes = found === '' ? [] : found.split(', ');
  return {
    name,
    answered: true,
    codes: codes.map((one) => {
      const [code = '', status] = one.split(' ');
      return plainCode(code, scanCodeStatusSchema.parse(status), words[code.slice(0, 5)]);
    }),
  };
}

/** The modules most vehicles of the sample have; those named in `found` are replaced, or added at the end. */
export function scanModules(found: readonly string[]): ScanModule[] {
  const named = found.map(scanModule);
  const usual = ['Engine', 'Transmission', 'Brakes', 'Airbag', 'Body', 'Cluster', 'Radio'].map(scanModule);
  const kept = usual.map((module) => named.find(({ name }) => name === module.name) ?? module);
  return [...kept, ...named.filter(({ name }) => !kept.some((module) => module.name === name))];
}

/** The modules that the program itself reads out of a report. */
export function scanModulesOf(report: string): ScanModule[] {
  return findTroubleCodes(report).modules.map(({ name, answered, codes }) => ({
    name,
    answered,
    codes: codes.map(({ code, status, words, statusByte, isUnproven }) => ({
      code,
      status,
      words,
      statusByte,
      isUnproven,
    })),
  }));
}
