// Small code requests with their later life, for tests.
import type { RequestFacts } from '../../../app/domain/codes/request-facts.ts';
import { blankRequest } from '../../helpers/blank-request.ts';

export function makeRequest(given: Partial<RequestFacts> = {}): RequestFacts {
  return {
    ...blankRequest('2026-03-01'),
    kind: 'radio',
    module: 'Radio',
    deviceSerial: 'T1234567890ABC',
    reason: 'Radio asks for a code',
    proof: { document: 'Invoice', checkedOn: '2026-03-01', checkedBy: 'ada-1' },
    askedOf: 'Hillside Radio Service',
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
