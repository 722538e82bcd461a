// Whether a code or a serial looks as such ones usually do. Warns, never forbids: a warning can be kept with a reason.
// No sentence in here repeats a code: sentences end up on screens and in logs.
import type { CodeForm, CodeKindFacts, FormCharacters, RequestNeed, SerialForm } from './code-kinds.ts';

export type FormWarning = {
  /** Names the warning so that a reason for keeping the value can be kept beside it. */
  readonly key: 'code-form' | 'code-is-serial' | 'code-of-other-kind' | 'serial-form' | 'serial-is-vin';
  readonly field: 'code' | 'deviceSerial';
  readonly sentence: string;
};

/** As people write codes and serials down: spaces, dots and hyphens between groups do not count; small letters are capitals. */
export function compactCode(text: string): string {
  return text.replace(/[\s.\-\u2010-\u2015]/g, '').toUpperCase();
}

function consistsOf(text: string, characters: FormCharacters): boolean {
  return characters === 'digits' ? /^\d+$/.test(text) : /^[A-Z0-9]+$/.test(text);
}

function fitsCode(compact: string, form: CodeForm): boolean {
  return consistsOf(compact, form.characters) && form.lengths.includes(compact.length);
}

function fitsSerial(compact: string, form: SerialForm): boolean {
  return (
    consistsOf(compact, form.characters) &&
    compact.startsWith(form.beginsWith) &&
    (form.length === null || compact.length === form.length)
  );
}

function formsFor(kind: CodeKindFacts, modelYear: number | null): readonly SerialForm[] {
  if (modelYear === null) return kind.serialForms;
  return kind.serialForms.filter(
    (form) =>
      (form.fromModelYear === null || modelYear >= form.fromModelYear) &&
      (form.toModelYear === null || modelYear <= form.toModelYear),
  );
}

const wordOf: Readonly<Record<FormCharacters, string>> = {
  digits: 'digits',
  'letters-and-digits': 'letters and digits',
};

function either(parts: readonly string[]): string {
  return parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} or ${parts.at(-1)}`;
}

function describeSerial({ length, characters, beginsWith }: SerialForm): string {
  const count = length === null ? wordOf[characters] : `${length} ${wordOf[characters]}`;
  return beginsWith === '' ? count : `${count} beginning with ${beginsWith}`;
}

/** Whether the code looks as codes of its kind usually do. Common practice, no source, where the kind names none. */
export function checkCodeForm(kind: CodeKindFacts, value: string): readonly FormWarning[] {
  const compact = compactCode(value);
  if (kind.codeForm === null || fitsCode(compact, kind.codeForm)) return [];
  // A form that names nothing but a count would take every long word for a serial.
  if (kind.serialForms.some((form) => form.beginsWith !== '' && fitsSerial(compact, form))) {
    return [
      {
        key: 'code-is-serial',
        field: 'code',
        sentence: 'This looks like the serial of the device, not like its code. Check it, or keep it with a reason.',
      },
    ];
  }
  const usual = `${either(kind.codeForm.lengths.map(String))} ${wordOf[kind.codeForm.characters]}`;
  const has = consistsOf(compact, kind.codeForm.characters)
    ? `This one has ${compact.length}`
    : 'This one has other characters in it';
  return [
    {
      key: 'code-form',
      field: 'code',
      sentence: `${kind.name}: usually ${usual}. ${has}. Check it, or keep it with a reason.`,
    },
  ];
}

/** Whether the device's serial looks as usual for the model year; null: the year is not known, and any usual form will do. */
export function checkSerialForm(kind: CodeKindFacts, serial: string, modelYear: number | null): readonly FormWarning[] {
  const compact = compactCode(serial);
  const forms = formsFor(kind, modelYear);
  if (compact === '' || forms.length === 0 || forms.some((form) => fitsSerial(compact, form))) return [];
  if (/^[A-HJ-NPR-Z0-9]{17}$/.test(compact)) {
    return [
      {
        key: 'serial-is-vin',
        field: 'deviceSerial',
        sentence: 'This looks like a VIN. The serial stands on the device itself. Check it, or keep it with a reason.',
      },
    ];
  }
  const year = modelYear === null ? '' : ` for model year ${modelYear}`;
  return [
    {
      key: 'serial-form',
      field: 'deviceSerial',
      sentence: `${kind.name}: a serial${year} is usually ${either(forms.map(describeSerial))}. Check it, or keep it with a reason.`,
    },
  ];
}

/**
 * The kind whose usual form this value has while it lacks the form of its own kind; null when nothing speaks for a mix-up. A kind
 * without a usual form cannot be told from others.
 */
export function looksLikeOtherKind(
  kind: CodeKindFacts,
  value: string,
  kinds: readonly CodeKindFacts[],
): CodeKindFacts | null {
  const compact = compactCode(value);
  if (kind.codeForm === null || fitsCode(compact, kind.codeForm)) return null;
  return (
    kinds.find(
      (other) => other.id !== kind.id && other.isActive && other.codeForm !== null && fitsCode(compact, other.codeForm),
    ) ?? null
  );
}

/** Everything that is unusual about a code, the mix-up of two kinds instead of the bare form where that explains it. */
export function codeWarnings(
  kind: CodeKindFacts,
  value: string,
  kinds: readonly CodeKindFacts[],
): readonly FormWarning[] {
  const other = looksLikeOtherKind(kind, value, kinds);
  if (other === null) return checkCodeForm(kind, value);
  const sentence = `This looks like a code of another kind: ${other.name.toLowerCase()}, where ${kind.name.toLowerCase()} is wanted. One does not do for the other. Check it, or keep it with a reason.`;
  return [{ key: 'code-of-other-kind', field: 'code', sentence }];
}

/** Warnings for which no reason has been kept yet. */
export function openWarnings(
  warnings: readonly FormWarning[],
  kept: readonly { readonly key: string; readonly reason: string }[],
): readonly FormWarning[] {
  return warnings.filter(
    (warning) => !kept.some((reason) => reason.key === warning.key && reason.reason.trim() !== ''),
  );
}

const sentenceOfNeed: Readonly<Record<RequestNeed, { readonly field: string; readonly sentence: string }>> = {
  vin: { field: 'vin', sentence: 'The request needs the VIN. Enter it at the vehicle first.' },
  'device-serial': { field: 'deviceSerial', sentence: 'The request needs the serial that stands on the device.' },
  module: { field: 'module', sentence: 'Say which module the code is for.' },
  reason: { field: 'reason', sentence: 'Say what the code is needed for.' },
};

export type CarriedFacts = {
  readonly vin: string;
  readonly deviceSerial: string;
  readonly module: string;
  readonly reason: string;
};

/** What a request of this kind must carry and does not. */
export function missingFromRequest(
  kind: CodeKindFacts,
  facts: CarriedFacts,
): readonly { readonly field: string; readonly sentence: string }[] {
  const has: Readonly<Record<RequestNeed, string>> = {
    vin: facts.vin,
    'device-serial': facts.deviceSerial,
    module: facts.module,
    reason: facts.reason,
  };
  return kind.needs.filter((need) => has[need].trim() === '').map((need) => sentenceOfNeed[need]);
}
