// Holds every change and every view against the table of rights, in the main process; hiding a button is only politeness.
import type { LotRow, VehicleView } from '../contract/views.ts';
import type { CodeRequestDraft } from '../domain/codes/code-request.ts';
import type { Role } from '../domain/fleet/shop.ts';
import { type Rights, rightsOf } from '../domain/people/role-rights.ts';
import type { AttachmentDraft } from '../domain/vehicle/attachment.ts';
import type { VehicleChange } from '../domain/vehicle/change.ts';
import { noTargets } from '../domain/vehicle/purchase.ts';
import type { VehicleReckoning } from '../domain/vehicle/reckon.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';

/** Sales sees what can be shown to a buyer: proven, not sold. Everybody else sees the whole lot. */
export function maySeeVehicle(role: Role, vehicle: Vehicle, reckoning: VehicleReckoning): boolean {
  return role !== 'sales' || (vehicle.sale === null && reckoning.readiness.verifiedOn !== null);
}

const lifeFields: readonly string[] = ['chases', 'tries'];

/** True when the request is known and nothing of it differs but its chases and tries. */
function changesOnlyItsLife(vehicle: Vehicle, item: CodeRequestDraft): boolean {
  const before = vehicle.codeRequests.find(({ id }) => id === item.id);
  if (!before) return false;
  return Object.entries(item).every(
    ([field, value]) =>
      lifeFields.includes(field) || JSON.stringify(value) === JSON.stringify(Reflect.get(before, field)),
  );
}

/**
 * The change with what was not shown put back as the record has it: an amount that left blanked never comes back as nothing.
 */
export function withHiddenKept(rights: Rights, vehicle: Vehicle, change: VehicleChange): VehicleChange {
  if (change.kind !== 'put' || change.list !== 'codeRequests' || rights.seesMoney) return change;
  const before = vehicle.codeRequests.find(({ id }) => id === change.item.id);
  return { ...change, item: { ...change.item, feeCents: before?.feeCents ?? 0 } };
}

function onlyManager(role: Role): string {
  return role === 'manager'
    ? 'There are amounts in this. Sign in first; then it can be changed.'
    : 'Only the manager changes this. Ask the manager, or change who is at the desk.';
}

export function maySeeAttachment(rights: Rights, { readers }: Pick<AttachmentDraft, 'readers'>): boolean {
  return rights.readsAttachmentsFor.includes(readers);
}

/** What is for somebody else is not changed, and nobody hides from themselves what they see. */
function attachmentRefusal(rights: Rights, vehicle: Vehicle, change: VehicleChange): string | null {
  if (change.kind === 'set' || change.list !== 'attachments') return null;
  const id = change.kind === 'put' ? change.item.id : change.id;
  const before = vehicle.attachments.find((attachment) => attachment.id === id);
  if (before && !maySeeAttachment(rights, before)) return 'This photograph or document is the manager’s.';
  if (change.kind === 'put' && !maySeeAttachment(rights, change.item))
    return 'Only the manager keeps something for the manager alone.';
  return null;
}

/** Why this role may not make this change, in a sentence; null when it may. */
export function refusalOf(
  role: Role,
  vehicle: Vehicle,
  change: VehicleChange,
  rights: Rights = rightsOf(role),
): string | null {
  if (change.kind === 'set') return rights.sets.includes(change.section) ? null : onlyManager(role);
  if (
    change.kind === 'put' &&
    change.list === 'codeRequests' &&
    !rights.puts.includes('codeRequests') &&
    rights.notesCodeLife
  )
    return changesOnlyItsLife(vehicle, change.item)
      ? null
      : 'You can note here that the code was chased and tried. Anything else about the request is the manager’s.';
  const lists = change.kind === 'put' ? rights.puts : rights.removes;
  if (!lists.includes(change.list))
    return role === 'sales'
      ? 'Sales signs checks, writes notes and adds photographs. Ask the workshop or the manager for anything else.'
      : onlyManager(role);
  const aboutAttachment = attachmentRefusal(rights, vehicle, change);
  if (aboutAttachment !== null) return aboutAttachment;
  if (change.kind === 'put' && change.list === 'faults' && !rights.decides) {
    const before = vehicle.faults.find((fault) => fault.id === change.item.id)?.decision ?? null;
    if (JSON.stringify(before) !== JSON.stringify(change.item.decision))
      return 'What is done about a fault is decided by the manager. Save the fault without a decision, and ask.';
  }
  return null;
}

/** The record without the money that this role may not see. Blanked values are never written back: see `refusalOf`. */
function withoutMoney(vehicle: Vehicle, rights: Rights): Vehicle {
  const { seesPartPrices, seesCodes } = rights;
  return {
    ...vehicle,
    purchase: { ...vehicle.purchase, priceCents: 0, feesCents: 0, transportCents: 0, fundingPlanId: null },
    targets: noTargets,
    parts: seesPartPrices
      ? vehicle.parts
      : vehicle.parts.map((part) => ({ ...part, priceCents: null, coreChargeCents: 0 })),
    codeRequests: seesCodes ? vehicle.codeRequests.map((request) => ({ ...request, feeCents: 0 })) : [],
    sublets: vehicle.sublets.map((sublet) => ({ ...sublet, quotedCents: null, invoicedCents: null })),
    otherCosts: [],
    attachments: vehicle.attachments.filter((attachment) => maySeeAttachment(rights, attachment)),
    sale: vehicle.sale === null ? null : { ...vehicle.sale, priceCents: 0, paidOffOn: null },
  };
}

/** The view as this role may have it. */
export function viewFor(role: Role, view: VehicleView, rights: Rights = rightsOf(role)): VehicleView {
  if (rights.seesMoney) return view;
  const blanked = withoutMoney(view.vehicle, rights);
  const asking = role === 'sales' ? view.vehicle.targets.askingCents : null;
  const forecast = rights.seesForecast ? view.forecast : null;
  return {
    ...view,
    costs: null,
    prospect: null,
    forecast,
    isForecastToCome: rights.seesForecast && view.isForecastToCome,
    course: rights.seesForecast ? view.course : null,
    vehicle: { ...blanked, targets: { ...blanked.targets, askingCents: asking } },
  };
}

/** The row as this role may have it. */
export function rowFor(role: Role, row: LotRow, rights: Rights = rightsOf(role)): LotRow {
  if (rights.seesMoney) return row;
  return {
    ...row,
    forecast: rights.seesForecast ? row.forecast : null,
    money: null,
    askingCents: role === 'sales' ? row.askingCents : null,
  };
}
