// What each role sees, enters, sets and prints: the one table. The main process enforces it (services/role-rules.ts); the page reads it
// too, so that nothing is offered that would be refused.
import type { Role } from '../fleet/shop.ts';
import { type FleetSheetKind, fleetSheetKindSchema, type SheetKind, sheetKindSchema } from '../sheets/sheet.ts';
import { type AttachmentReaders, attachmentReadersSchema } from '../vehicle/attachment.ts';
import { type FactList, factListSchema, type Section } from '../vehicle/change.ts';

export type Rights = {
  readonly seesMoney: boolean;
  readonly seesForecast: boolean;
  readonly seesPartPrices: boolean;
  readonly seesCodes: boolean;
  /** Notes that a code was chased and tried, though the request itself is another's to change. */
  readonly notesCodeLife: boolean;
  /** The photographs and documents this person sees, by whom they are for. */
  readonly readsAttachmentsFor: readonly AttachmentReaders[];
  /** Documents may hold amounts; photographs are added by everybody. */
  readonly addsDocuments: boolean;
  readonly puts: readonly FactList[];
  readonly removes: readonly FactList[];
  readonly sets: readonly Section[];
  readonly decides: boolean;
  readonly prints: readonly SheetKind[];
  /** Sheets of many vehicles; what stands on them follows the other rights. */
  readonly printsOfFleet: readonly FleetSheetKind[];
};

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
  'attachments',
];

const sections: readonly Section[] = ['identity', 'purchase', 'arrival', 'targets', 'sale'];

const rightsByRole: Readonly<Record<Role, Rights>> = {
  manager: {
    seesForecast: true,
    seesMoney: true,
    seesPartPrices: true,
    seesCodes: true,
    notesCodeLife: true,
    readsAttachmentsFor: attachmentReadersSchema.options,
    addsDocuments: true,
    puts: factListSchema.options,
    removes: factListSchema.options,
    sets: sections,
    decides: true,
    prints: sheetKindSchema.options,
    printsOfFleet: fleetSheetKindSchema.options,
  },
  technician: {
    seesForecast: true,
    seesMoney: false,
    seesPartPrices: true,
    seesCodes: true,
    notesCodeLife: true,
    readsAttachmentsFor: ['everyone', 'workshop'],
    addsDocuments: true,
    puts: workshopLists,
    removes: workshopLists,
    sets: ['identity', 'arrival'],
    decides: false,
    prints: ['job-sheet', 'plan-sheet', 'readiness-sheet'],
    printsOfFleet: ['parts-list', 'fleet-list'],
  },
  sales: {
    seesForecast: false,
    seesMoney: false,
    seesPartPrices: false,
    seesCodes: false,
    notesCodeLife: false,
    readsAttachmentsFor: ['everyone'],
    addsDocuments: false,
    puts: ['signOffs', 'notes', 'attachments'],
    removes: [],
    sets: [],
    decides: false,
    prints: ['readiness-sheet', 'window-sheet'],
    printsOfFleet: ['fleet-list'],
  },
};

export function rightsOf(role: Role): Rights {
  return rightsByRole[role];
}
