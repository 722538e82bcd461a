// Whether the supply held while a module was programmed. Limits are the make's where known, else the common ones; never a permission.
import { z } from 'zod';
import { filledLineSchema } from '../shared/text.ts';

const voltsSchema = z.number().min(8).max(18);

export const supportRangeSchema = z
  .strictObject({
    /** The make this holds for; null: every make without its own row. */
    make: filledLineSchema(60).nullable(),
    lowestVolts: voltsSchema,
    highestVolts: voltsSchema,
    source: filledLineSchema(240),
  })
  .refine((range) => range.lowestVolts < range.highestVolts, 'The lowest volts must be below the highest.');
export type SupportRange = z.infer<typeof supportRangeSchema>;

export const supportRangesSchema = z.array(supportRangeSchema).max(120);

export const usualSupportRange: SupportRange = {
  make: null,
  lowestVolts: 12.4,
  highestVolts: 14.0,
  source: 'common practice, no source; the maker’s service information comes first',
};

/** The row for this make, else the row for every make, else the usual range. Makes are compared without regard to case and spaces. */
export function supportRangeFor(make: string, ranges: readonly SupportRange[]): SupportRange {
  const plain = (text: string) => text.toLowerCase().replace(/\s+/g, '');
  const own = ranges.find((range) => range.make !== null && plain(range.make) === plain(make));
  return own ?? ranges.find((range) => range.make === null) ?? usualSupportRange;
}

/** The same for a make, by the shop's own table. */
export function warnAboutSupportOf(
  make: string,
  ranges: readonly SupportRange[],
  volts: Parameters<typeof warnAboutSupport>[0],
): readonly string[] {
  return warnAboutSupport(volts, supportRangeFor(make, ranges));
}

/** Warnings about the supply: volts before, the lowest during and after the write, null where not measured. */
export function warnAboutSupport(
  volts: { readonly before: number | null; readonly lowest: number | null; readonly after: number | null },
  range: SupportRange = usualSupportRange,
): readonly string[] {
  const moments = [
    ['before programming', volts.before],
    ['at the lowest', volts.lowest],
    ['after programming', volts.after],
  ] as const;
  return moments.flatMap(([moment, measured]) => {
    if (measured === null) return [];
    const limits = `${range.lowestVolts} to ${range.highestVolts} V (${range.source})`;
    if (!Number.isFinite(measured)) return [`The volts ${moment} are not a number. Measure again.`];
    if (measured < range.lowestVolts) return [`${measured} V ${moment} is too low; keep the supply within ${limits}.`];
    if (measured > range.highestVolts)
      return [`${measured} V ${moment} is too high; keep the supply within ${limits}.`];
    return [];
  });
}
