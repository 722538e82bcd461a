// How sheets write hours, numbers and the record's short keys, in plain words. No layout, no rules about what to print.
import type { Person } from '../fleet/shop.ts';
import type { AttemptOutcome } from '../programming/attempt.ts';
import type { ModuleOrigin } from '../programming/module-origin.ts';
import type { DriveKind, Odometer } from '../vehicle/identity.ts';
import type { SheetStep } from './sheet.ts';

/** '1 h 25 min'. */
export function showMinutes(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** 'ABC DEFGHJ KLMNPRST': maker, description, and the last eight that people search by (sections of ISO 3779). */
export function groupVin(vin: string): string {
  return vin.length === 17 ? `${vin.slice(0, 3)} ${vin.slice(3, 9)} ${vin.slice(9)}` : vin;
}

export function showOdometer(odometer: Odometer | null): string {
  if (odometer === null) return 'not read';
  return `${odometer.reading.toString().replace(/\B(?=(\d{3})+$)/g, ',')} ${odometer.unit}`;
}

export const driveWords: Readonly<Record<DriveKind, string>> = {
  combustion: 'combustion',
  hybrid: 'hybrid',
  electric: 'electric',
};

export const originWords: Readonly<Record<ModuleOrigin, string>> = {
  new: 'new unit',
  used: 'used unit',
  repaired: 'repaired unit',
  cloned: 'cloned unit',
  kept: 'the unit in the vehicle stays',
};

export const outcomeWords: Readonly<Record<AttemptOutcome, string>> = {
  worked: 'worked',
  failed: 'failed',
  stopped: 'was stopped',
};

export function personName(people: readonly Pick<Person, 'id' | 'name'>[], id: string): string {
  return people.find((person) => person.id === id)?.name ?? 'somebody no longer listed';
}

export function capitalised(text: string): string {
  const [first = ''] = text;
  return first.toLocaleUpperCase('en') + text.slice(first.length);
}

/** The sentence with a full stop, unless it already ends like one. */
export function sentence(text: string): string {
  const trimmed = text.trim();
  return trimmed === '' || /[.!?…]$/.test(trimmed) ? trimmed : `${trimmed}.`;
}

/** Parts of a remark joined by a middle dot, empty ones left out. */
export function joined(parts: readonly string[]): string {
  const filled = parts.map((part) => part.trim()).filter((part) => part !== '');
  // A full stop before a dot looks like a slip.
  return filled.map((part, index) => (index < filled.length - 1 ? part.replace(/\.$/, '') : part)).join(' · ');
}

const emptyStep: SheetStep = { text: '', detail: '', state: 'open', marks: [], blanks: [] };

/** An open box with these words, and whatever else is given. */
export function openStep(text: string, more: Partial<SheetStep> = {}): SheetStep {
  return { ...emptyStep, text, ...more };
}

export function quiet(text: string): { readonly text: string; readonly emphasis: 'quiet' } {
  return { text, emphasis: 'quiet' };
}

export function strong(text: string): { readonly text: string; readonly emphasis: 'strong' } {
  return { text, emphasis: 'strong' };
}

export function plain(text: string): { readonly text: string; readonly emphasis: 'none' } {
  return { text, emphasis: 'none' };
}
