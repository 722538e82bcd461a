// Small code requests with their later life, for tests.
import { noRequestLife, type RequestFacts } from '../../../app/domain/codes/request-facts.ts';

export function makeRequest(given: Partial<RequestFacts> = {}): RequestFacts {
  return {
    notedOn: '2026-03-01',
    kind: 'radio',
    module: 'Radio',
    deviceSerial: 'T1234567890ABC',
    reason: 'Radio asks for a code',
    faultId: null,
    proof: { document: 'Invoice', checkedOn: '2026-03-01', checkedBy: 'ada-1' },
    askedOn: null,
    askedOf: 'Hillside Radio Service',
    expectedOn: null,
    answeredOn: null,
    outcome: null,
    feeCents: 0,
    keptWhere: '',
    note: '',
    ...noRequestLife,
    ...given,
  };
}

export function makeChase(chasedOn: string, promisedOn: string | null = null): RequestFacts['chases'][number] {
  return { id: `chase-${chasedOn}`, chasedOn, by: 'ada-1', how: 'phone', promisedOn, note: '' };
}

export function makeTry(
  triedOn: string,
  result: 'right' | 'wrong',
  given: Partial<RequestFacts['tries'][number]> = {},
): RequestFacts['tries'][number] {
  return { id: `try-${triedOn}`, triedOn, by: 'ben-1', result, triesLeft: null, lockedUntil: null, note: '', ...given };
}
