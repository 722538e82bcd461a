// What is offered to each role on this screen. A courtesy only: the main process decides, by its own table, whatever the page asks.
import type { Role } from '../../../app/domain/fleet/shop.ts';
import type { FactList, Section } from '../../../app/domain/vehicle/change.ts';

const workshopLists: readonly FactList[] = [
  'scans',
  'batteryReadings',
  'faults',
  'jobs',
  'attempts',
  'parts',
  'labour',
  'signOffs',
  'notes',
];
const salesLists: readonly FactList[] = ['signOffs', 'notes'];

export function mayPut(role: Role, list: FactList): boolean {
  return role === 'manager' || (role === 'technician' ? workshopLists : salesLists).includes(list);
}

export function mayRemove(role: Role, list: FactList): boolean {
  return role === 'manager' || (role === 'technician' && workshopLists.includes(list));
}

export function maySet(role: Role, section: Section): boolean {
  return role === 'manager' || (role === 'technician' && (section === 'identity' || section === 'arrival'));
}

/** What is done about a fault is the manager's to say. */
export function mayDecide(role: Role): boolean {
  return role === 'manager';
}

export function maySeeCodes(role: Role): boolean {
  return role !== 'sales';
}

export function maySeePartPrices(role: Role): boolean {
  return role !== 'sales';
}

export function mayPrint(role: Role, kind: 'job-sheet' | 'readiness-sheet'): boolean {
  return role !== 'sales' || kind === 'readiness-sheet';
}
