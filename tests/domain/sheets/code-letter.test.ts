// The letter that asks for a code: not before proof of ownership is recorded, one for each request, and never a code on it.
import { describe, expect, it } from 'vitest';
import { codeLetter, letterRequests, whyNoCodeLetter } from '../../../app/domain/sheets/code-letter.ts';
import { requestReference, shortOf } from '../../../app/domain/sheets/request-reference.ts';
import { type SheetBlock, sheetSchema } from '../../../app/domain/sheets/sheet.ts';
import { whyNoSheet } from '../../../app/domain/sheets/why-no-sheet.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import {
  exampleAmounts,
  examplePrinting,
  exampleShop,
  exampleToday,
  exampleVehicle,
} from '../../helpers/sheet-example.ts';
import { amountsIn, sheetText } from '../../helpers/sheet-text.ts';

const about = { today: exampleToday, requestId: 'code-radio' };
const letter = codeLetter(exampleVehicle, exampleShop, examplePrinting, about);

function withRadio(changes: Partial<Vehicle['codeRequests'][number]>): Vehicle {
  const codeRequests = exampleVehicle.codeRequests.map((one) =>
    one.id === 'code-radio' ? { ...one, ...changes } : one,
  );
  return { ...exampleVehicle, codeRequests };
}

describe('the code request letter', () => {
  it('is a sheet by its schema, without money and without a word of where a code is kept', () => {
    expect(sheetSchema.safeParse(letter).error?.issues).toBeUndefined();
    expect(amountsIn(sheetText(letter), exampleAmounts)).toEqual([]);
    expect(sheetText(letter)).not.toMatch(/envelope|safe\b/);
  });

  it('says to whom, who asks, where to reply, and a reference of its own', () => {
    const [head] = letter.blocks;
    expect(head).toMatchObject({ kind: 'letter-head', addressee: 'Maker’s code desk' });
    const rows = new Map(
      (head as Extract<SheetBlock, { kind: 'letter-head' }>).rows.map((row) => [row.label, row.value]),
    );
    expect(rows.get('Date')).toBe('18 Mar 2026');
    expect(rows.get('Asked by')).toBe('Mara Lindqvist');
    expect(rows.get('Reply to')).toBe('Fernhollow Motor Yard\n14 Millrace Lane\nFernhollow\n555 0142');
    expect(rows.get('Our reference, please repeat it')).toBe(`F-1042/${shortOf('code-radio')}`);
  });

  it('names the kind of code, VIN, device serial and proof of ownership, and carries the VIN as bars', () => {
    const cells = letter.blocks.flatMap((block) =>
      block.kind === 'table' ? block.rows.map((row) => row.map(({ text }) => text)) : [],
    );
    expect(cells).toContainEqual(['Code asked for', 'Radio code']);
    expect(cells).toContainEqual(['VIN', '0LW 4BRHC6 KA010427']);
    expect(cells).toContainEqual(['Serial number of the device', 'R20-118834']);
    expect(cells).toContainEqual(['Document', 'purchase invoice']);
    expect(cells).toContainEqual(['Checked on', '9 Mar 2026']);
    expect(letter.blocks.filter(({ kind }) => kind === 'barcode')).toMatchObject([
      { symbology: 'code39', value: '0LW4BRHC6KA010427' },
      { symbology: 'datamatrix', value: '0LW4BRHC6KA010427' },
    ]);
  });

  it('is refused until proof of ownership is recorded, whoever asks and by whatever way', () => {
    const unproven = withRadio({ proof: null });
    expect(whyNoCodeLetter(unproven, exampleShop, 'code-radio')).toContain('proof of ownership');
    expect(whyNoSheet('code-letter', unproven, exampleShop, 'code-radio')).toContain('proof of ownership');
    expect(() => codeLetter(unproven, exampleShop, examplePrinting, about)).toThrow('proof of ownership');
    expect(letterRequests(unproven, exampleShop)).toEqual([]);
    expect(whyNoCodeLetter(unproven, exampleShop, null)).toContain('proof of ownership');
  });

  it('is refused while a radio has no serial, nobody is named to ask, or the kind is gone', () => {
    expect(whyNoCodeLetter(withRadio({ deviceSerial: '' }), exampleShop, 'code-radio')).toMatch(/serial/);
    expect(whyNoCodeLetter(withRadio({ askedOf: ' ' }), exampleShop, 'code-radio')).toContain('Say whom');
    expect(whyNoCodeLetter(withRadio({ kind: 'gone' }), exampleShop, 'code-radio')).toContain('no longer knows');
  });

  it('is for requests without an answer: one letter each', () => {
    expect(letterRequests(exampleVehicle, exampleShop)).toEqual(['code-radio']);
    const answered = withRadio({ answeredOn: '2026-03-18', outcome: 'refused' });
    expect(letterRequests(answered, exampleShop)).toEqual([]);
    expect(whyNoCodeLetter(answered, exampleShop, null)).toContain('nobody to write to');
    expect(whyNoCodeLetter(exampleVehicle, exampleShop, 'other')).toContain('no longer in the record');
  });

  it('has a reference that stays the same and tells requests apart', () => {
    const ids = Array.from({ length: 300 }, (_, index) => `request-${index}`);
    expect(new Set(ids.map(shortOf)).size).toBeGreaterThan(290);
    expect(requestReference(exampleVehicle, { id: 'code-radio' })).toBe(
      requestReference(exampleVehicle, { id: 'code-radio' }),
    );
    expect(shortOf('code-radio')).toMatch(/^[2-9A-HJ-NPR-TV-Z]{4}$/);
  });
});
