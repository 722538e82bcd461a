// Who did something to a vehicle, for the histories that the storage and fault tests write. No test runner in here.
import type { Telling } from '../../app/storage/fleet-history.ts';

export const byAda: Telling = { by: 'person-1', kind: 'change', label: 'key tag changed' };
