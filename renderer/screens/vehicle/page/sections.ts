// The sections of the vehicle screen in their order, how many entries each holds, and which section a thing to do is dealt with in. Pure.
import type { VehicleView } from '../../../../app/contract/views.ts';
import { type GateItem, isHolding } from '../../../../app/domain/readiness/gate.ts';
import type { FactList, Section } from '../../../../app/domain/vehicle/change.ts';

export const sectionKeys = [
  'details',
  'purchase',
  'money',
  'scans',
  'faults',
  'parts',
  'codes',
  'battery',
  'programming',
  'labour',
  'sublet',
  'costs',
  'checks',
  'attachments',
  'notes',
  'sale',
] as const;
export type SectionKey = (typeof sectionKeys)[number];

const sectionOfList: Readonly<Record<FactList, SectionKey>> = {
  scans: 'scans',
  batteryReadings: 'battery',
  faults: 'faults',
  jobs: 'programming',
  attempts: 'programming',
  parts: 'parts',
  codeRequests: 'codes',
  labour: 'labour',
  sublets: 'sublet',
  otherCosts: 'costs',
  signOffs: 'checks',
  notes: 'notes',
  attachments: 'attachments',
};

const sectionOfSection: Readonly<Record<Section, SectionKey>> = {
  identity: 'details',
  purchase: 'purchase',
  arrival: 'purchase',
  targets: 'money',
  sale: 'sale',
};

export function sectionOf(place: GateItem['place']): SectionKey {
  return 'list' in place ? sectionOfList[place.list] : sectionOfSection[place.section];
}

/** A place as the route carries it, checked: a route may name anything. */
export function readPlace(place: { readonly list: string; readonly id: string | null } | { readonly section: string }) {
  if ('list' in place) {
    const list = (Object.keys(sectionOfList) as FactList[]).find((candidate) => candidate === place.list);
    return list === undefined ? null : { list, id: place.id };
  }
  const section = (Object.keys(sectionOfSection) as Section[]).find((candidate) => candidate === place.section);
  return section === undefined ? null : { section };
}

/** Sections that hold a list, with the number of entries; the others have none to count. */
export function countIn(view: VehicleView, key: SectionKey): number | null {
  const { vehicle } = view;
  switch (key) {
    case 'scans':
      return vehicle.scans.length;
    case 'faults':
      return vehicle.faults.length;
    case 'parts':
      return vehicle.parts.length;
    case 'codes':
      return vehicle.codeRequests.length;
    case 'battery':
      return vehicle.batteryReadings.length;
    case 'programming':
      return vehicle.jobs.length;
    case 'labour':
      return vehicle.labour.length;
    case 'sublet':
      return vehicle.sublets.length;
    case 'costs':
      return vehicle.otherCosts.length;
    case 'attachments':
      return vehicle.attachments.length;
    case 'notes':
      return vehicle.notes.length;
    default:
      return null;
  }
}

/** How many things that hold the sale are dealt with in each section. A sold vehicle is held by nothing. */
export function holdingBySection(view: VehicleView): ReadonlyMap<SectionKey, number> {
  const holding = new Map<SectionKey, number>();
  if (view.vehicle.sale !== null) return holding;
  for (const item of view.readiness.gates.filter(isHolding).flatMap((gate) => gate.items)) {
    const key = sectionOf(item.place);
    holding.set(key, (holding.get(key) ?? 0) + 1);
  }
  return holding;
}

/** Entries of one list that hold the sale, by identity. */
export function holdingIn(view: VehicleView, list: FactList): ReadonlySet<string> {
  if (view.vehicle.sale !== null) return new Set();
  const places = view.readiness.gates.filter(isHolding).flatMap((gate) => gate.items.map((item) => item.place));
  return new Set(places.flatMap((place) => ('list' in place && place.list === list && place.id ? [place.id] : [])));
}

/** Sections in which something was typed and not saved, from the keys of the drafts: '<vehicle>/<list or section>…'. */
export function sectionsWithDrafts(draftKeys: Iterable<string>, vehicleId: string): ReadonlySet<SectionKey> {
  const found = new Set<SectionKey>();
  for (const key of draftKeys) {
    const [vehicle, part = ''] = key.split('/');
    if (vehicle !== vehicleId) continue;
    const place = readPlace({ list: part, id: null }) ?? readPlace({ section: part });
    if (place !== null) found.add(sectionOf(place));
  }
  return found;
}

/** The sections a person sees: no money and no costs for whoever sees none, no codes for sales. */
export function visibleSections(
  view: Pick<VehicleView, 'costs'>,
  { seesCodes }: { readonly seesCodes: boolean },
): readonly SectionKey[] {
  return sectionKeys.filter((key) => {
    if (key === 'money' || key === 'costs') return view.costs !== null;
    return key !== 'codes' || seesCodes;
  });
}
