// Options for select fields out of closed lists and out of the entries of the vehicle. Pure.
import type { Desk } from '../../../../app/contract/views.ts';
import type { Vehicle } from '../../../../app/domain/vehicle/vehicle.ts';
import { ledgerText } from '../../../text/vehicle.ts';

export type Choice<Value extends string> = { readonly value: Value; readonly label: string };

export function chooseFrom<Value extends string>(
  values: readonly Value[],
  names: Readonly<Record<Value, string>>,
): readonly Choice<Value>[] {
  return values.map((value) => ({ value, label: names[value] }));
}

/** With an empty first choice: nothing, or not known. */
export function chooseOrNone(
  entries: readonly Choice<string>[],
  none: string = ledgerText.none,
): readonly Choice<string>[] {
  return [{ value: '', label: none }, ...entries];
}

export function faultChoices(vehicle: Pick<Vehicle, 'faults'>): readonly Choice<string>[] {
  return chooseOrNone(vehicle.faults.map((fault) => ({ value: fault.id, label: fault.what })));
}

export function partChoices(vehicle: Pick<Vehicle, 'parts'>): readonly Choice<string>[] {
  return chooseOrNone(vehicle.parts.map((part) => ({ value: part.id, label: part.what })));
}

/** Active people, and whoever is entered already although no longer active. */
export function peopleChoices(desk: Pick<Desk, 'people'>, chosen: string): readonly Choice<string>[] {
  return desk.people
    .filter((person) => person.isActive || person.id === chosen)
    .map((person) => ({ value: person.id, label: person.name }));
}

export function personName(desk: Pick<Desk, 'people'>, id: string): string {
  return desk.people.find((person) => person.id === id)?.name ?? ledgerText.nobody;
}

/** Words already used in the vehicle, for datalists: each once, in order. */
export function usedWords(words: readonly string[]): readonly string[] {
  return [...new Set(words.map((word) => word.trim()).filter((word) => word !== ''))].sort();
}

/** A select field holds text; in the record "none" is null. */
export function orNull(value: string): string | null {
  return value === '' ? null : value;
}
