// The encodings in which purchase lists arrive.
import { describe, expect, it } from 'vitest';
import { readListText } from '../../../app/domain/import/list-text.ts';

const text = 'VIN;Verkäufer\r\n1M8GDM9A3KP000009;Größe\r\n';
const utf16 = (order: 'le' | 'be', mark: boolean) => {
  const bytes = Buffer.from(`${mark ? '\uFEFF' : ''}${text}`, 'utf16le');
  return new Uint8Array(order === 'le' ? bytes : bytes.swap16());
};

describe('the text of a list', () => {
  it.each([
    ['UTF-8', new Uint8Array(Buffer.from(text)), 'utf-8'],
    ['UTF-8 with its mark', new Uint8Array(Buffer.from(`\uFEFF${text}`)), 'utf-8'],
    ['Windows-1252', new Uint8Array(Buffer.from(text, 'latin1')), 'windows-1252'],
    ['UTF-16 with its mark, low byte first', utf16('le', true), 'utf-16le'],
    ['UTF-16 with its mark, high byte first', utf16('be', true), 'utf-16be'],
    ['UTF-16 without a mark, low byte first', utf16('le', false), 'utf-16le'],
    ['UTF-16 without a mark, high byte first', utf16('be', false), 'utf-16be'],
  ])('is read from %s', (_name, bytes, encoding) => {
    expect(readListText(bytes)).toEqual({ text, encoding });
  });

  it('is none where zero bytes are left over', () => {
    expect(readListText(new Uint8Array([0x50, 0x4b, 3, 4, 0, 0, 0x41, 0x42, 0x43, 0x44, 0x45, 0, 9, 9]))).toBeNull();
  });

  it('may be empty', () => {
    expect(readListText(new Uint8Array())).toEqual({ text: '', encoding: 'utf-8' });
  });
});
