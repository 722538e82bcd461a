// Why a vehicle is not ready, a sentence for each gate that holds, for somebody who has to tell a buyer. No supplier, no money, no code.

import { codeName, type NamedKinds } from '../codes/code-name.ts';
import { promisedFor } from '../codes/request-life.ts';
import { type Gate, type GateItem, isHolding } from '../readiness/gate.ts';
import { type DayForm, showDay, showDaysIn } from '../shared/show-day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { sentence } from './sheet-words.ts';

function idOf(item: GateItem): string | null {
  return 'list' in item.place ? item.place.id : null;
}

function due(day: string | null, dayForm: DayForm): string {
  return day === null ? '' : ` (expected ${showDay(day, dayForm)})`;
}

/** What the item is about, in words that name no supplier; the item's own words where they never do. */
function itemWords(vehicle: Vehicle, gate: Gate, item: GateItem, dayForm: DayForm, kinds?: NamedKinds): string {
  const id = idOf(item);
  if (gate.key === 'parts') {
    const part = vehicle.parts.find((candidate) => candidate.id === id);
    if (part)
      return part.receivedOn === null ? `${part.what}${due(promisedFor(part), dayForm)}` : `${part.what} (here)`;
  }
  if (gate.key === 'codes') {
    const request = vehicle.codeRequests.find((candidate) => candidate.id === id);
    if (request) return `${codeName(request, kinds)}${due(promisedFor(request), dayForm)}`;
  }
  if (gate.key === 'sublet') {
    const sublet = vehicle.sublets.find((candidate) => candidate.id === id);
    if (sublet) return `${sublet.what}${due(promisedFor(sublet), dayForm)}`;
  }
  if (gate.key === 'decided' || gate.key === 'repaired') {
    const fault = vehicle.faults.find((candidate) => candidate.id === id);
    if (fault) return fault.what;
  }
  if (gate.key === 'programmed') {
    const job = vehicle.jobs.find((candidate) => candidate.id === id);
    if (job) return job.title;
  }
  return item.text;
}

const leads: Readonly<Record<string, string>> = {
  decided: 'Not decided yet what to do about',
  parts: 'Parts missing or not fitted',
  codes: 'Codes missing',
  programmed: 'Programming not finished',
  sublet: 'Work given outside not back',
  repaired: 'Repairs not finished',
};

function reasonFor(vehicle: Vehicle, gate: Gate, dayForm: DayForm, kinds?: NamedKinds): string {
  const lead = leads[gate.key];
  const words = gate.items.map((item) => showDaysIn(itemWords(vehicle, gate, item, dayForm, kinds), dayForm));
  if (lead === undefined) return words.map(sentence).join(' ') || sentence(gate.title);
  return sentence(`${lead}: ${words.join('; ')}`);
}

export function holdingReasons(
  vehicle: Vehicle,
  gates: readonly Gate[],
  dayForm: DayForm,
  kinds?: NamedKinds,
): readonly string[] {
  return gates.filter(isHolding).map((gate) => reasonFor(vehicle, gate, dayForm, kinds));
}
