// All words of a sheet as one text, to look for what must and what must not stand on it.
import type { Sheet } from '../../app/domain/sheets/sheet.ts';

/** Every string anywhere in the sheet, one a line. */
export function sheetText(sheet: Sheet): string {
  const found: string[] = [];
  const walk = (value: unknown) => {
    if (typeof value === 'string') found.push(value);
    else if (value !== null && typeof value === 'object') for (const inner of Object.values(value)) walk(inner);
  };
  walk(sheet.blocks);
  walk([sheet.title, sheet.subject, sheet.footer, sheet.sampleNotice, sheet.dealer, sheet.printedBy]);
  return found.join('\n');
}

/** The amounts of money that the text shows, however they are written: '9137', '9,137.00', '9137.00', '913700'. */
export function amountsIn(text: string, amountsCents: readonly number[]): readonly string[] {
  return amountsCents
    .flatMap((cents) => {
      const whole = Math.floor(cents / 100).toString();
      const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
      const part = (cents % 100).toString().padStart(2, '0');
      return [`${whole}.${part}`, `${grouped}.${part}`, `${whole},${part}`, whole, grouped, cents.toString()];
    })
    .filter((written) => new RegExp(`(?<![\\d.,])${written.replace(/[.]/g, '\\.')}(?![\\d])`).test(text));
}
