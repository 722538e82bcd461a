// The colour space of the sheets as an ICC profile, made here: what red, green and blue mean on every machine. Holds numbers only.

/**
 * sRGB after IEC 61966-2-1 as an ICC version 4.2 display profile. Primaries adapted to D50 by the Bradford method, as the ICC asks (from
 * memory); the tone curve in its published five-parameter form. Pages are black, white and a few flat colours, so nothing finer is needed.
 */
const primaries = {
  rXYZ: [0.43607, 0.22249, 0.01392],
  gXYZ: [0.38515, 0.71687, 0.09708],
  bXYZ: [0.14307, 0.06061, 0.7141],
} as const;
const d50 = [0.9642, 1, 0.82491] as const;
const bradfordFromD65 = [1.04788, 0.02292, -0.05021, 0.02959, 0.99048, -0.01707, -0.00923, 0.01508, 0.75168] as const;
const toneCurve = [2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045] as const;

function fixed(values: readonly number[]): Buffer {
  const bytes = Buffer.alloc(values.length * 4);
  for (const [index, value] of values.entries()) bytes.writeInt32BE(Math.round(value * 65_536), index * 4);
  return bytes;
}

function tag(signature: string, ...content: readonly Buffer[]): Buffer {
  return Buffer.concat([Buffer.from(signature, 'latin1'), Buffer.alloc(4), ...content]);
}

function wholeNumbers(...values: readonly number[]): Buffer {
  const bytes = Buffer.alloc(values.length * 4);
  for (const [index, value] of values.entries()) bytes.writeUInt32BE(value, index * 4);
  return bytes;
}

/** A text in one language, in the form that ICC profiles keep texts. */
function words(text: string): Buffer {
  const utf16 = Buffer.from(text, 'utf16le').swap16();
  return tag('mluc', wholeNumbers(1, 12), Buffer.from('enUS', 'latin1'), wholeNumbers(utf16.length, 28), utf16);
}

function header(size: number): Buffer {
  const bytes = Buffer.alloc(128);
  bytes.writeUInt32BE(size, 0);
  bytes.writeUInt32BE(0x04200000, 8);
  bytes.write('mntrRGB XYZ ', 12, 'latin1');
  // The day is fixed, so that the same sheet stays the same file to the byte.
  for (const [index, value] of [2026, 1, 1].entries()) bytes.writeUInt16BE(value, 24 + index * 2);
  bytes.write('acsp', 36, 'latin1');
  fixed(d50).copy(bytes, 68);
  return bytes;
}

function makeProfile(): Buffer {
  const curve = tag('para', Buffer.from([0, 3, 0, 0]), fixed(toneCurve));
  const tags: readonly (readonly [name: string, content: Buffer])[] = [
    ['desc', words('sRGB IEC61966-2.1')],
    ['cprt', words('No copyright, use freely')],
    ['wtpt', tag('XYZ ', fixed(d50))],
    ['chad', tag('sf32', fixed(bradfordFromD65))],
    ...Object.entries(primaries).map(([name, values]) => [name, tag('XYZ ', fixed(values))] as const),
    ['rTRC', curve],
    ['gTRC', curve],
    ['bTRC', curve],
  ];
  let at = 128 + 4 + tags.length * 12;
  const table: Buffer[] = [wholeNumbers(tags.length)];
  const contents: Buffer[] = [];
  for (const [name, content] of tags) {
    table.push(Buffer.from(name, 'latin1'), wholeNumbers(at, content.length));
    const padded = Buffer.concat([content, Buffer.alloc((4 - (content.length % 4)) % 4)]);
    contents.push(padded);
    at += padded.length;
  }
  return Buffer.concat([header(at), ...table, ...contents]);
}

export const srgbProfile: Buffer = makeProfile();
