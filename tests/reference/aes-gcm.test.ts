// Opening sealed boxes against NIST's vectors for AES-256-GCM with 96-bit nonces and 128-bit tags: test cases 13 to 16 of the GCM
// submission to NIST (McGrew and Viega), and samples of the CAVP files gcmEncryptExtIV256.rsp and gcmDecrypt256.rsp (SP 800-38D).
// Sealing draws its own nonce, so it is tied to the vectors by opening what it has sealed with the function tested here.
import { randomBytes } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { about, openSealed, seal } from '../../app/storage/vault/sealed-box.ts';

type Vector = {
  readonly name: string;
  readonly key: string;
  readonly nonce: string;
  readonly clear: string;
  readonly associated: string;
  readonly text: string;
  readonly tag: string;
};

const zeroKey = '00'.repeat(32);
const zeroNonce = '00'.repeat(12);
const keyOf15 = 'feffe9928665731c6d6a8f9467308308feffe9928665731c6d6a8f9467308308';
const clearOf15 =
  'd9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a721c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b391aafd255';
const textOf15 =
  '522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662898015ad';

const vectors: readonly Vector[] = [
  {
    name: 'test case 13',
    key: zeroKey,
    nonce: zeroNonce,
    clear: '',
    associated: '',
    text: '',
    tag: '530f8afbc74536b9a963b4f1c4cb738b',
  },
  {
    name: 'test case 14',
    key: zeroKey,
    nonce: zeroNonce,
    clear: '00'.repeat(16),
    associated: '',
    text: 'cea7403d4d606b6e074ec5d3baf39d18',
    tag: 'd0d1c8a799996bf0265b98b5d48ab919',
  },
  {
    name: 'test case 15',
    key: keyOf15,
    nonce: 'cafebabefacedbaddecaf888',
    clear: clearOf15,
    associated: '',
    text: textOf15,
    tag: 'b094dac5d93471bdec1a502270e3cc6c',
  },
  {
    name: 'test case 16',
    key: keyOf15,
    nonce: 'cafebabefacedbaddecaf888',
    clear: clearOf15.slice(0, 120),
    associated: 'feedfacedeadbeeffeedfacedeadbeefabaddad2',
    text: textOf15.slice(0, 120),
    tag: '76fc6ece0f4e1768cddf8853bb2d551b',
  },
  {
    name: 'CAVP, 128 bits of text, none associated',
    key: '31bdadd96698c204aa9ce1448ea94ae1fb4a9a0b3c9d773b51bb1822666b8f22',
    nonce: '0d18e06c7c725ac9e362e1ce',
    clear: '2db5168e932556f8089a0622981d017d',
    associated: '',
    text: 'fa4362189661d163fcd6a56d8bf0405a',
    tag: 'd636ac1bbedd5cc3ee727dc2ab4a9489',
  },
  {
    name: 'CAVP, 128 bits of text, 128 associated',
    key: '92e11dcdaa866f5ce790fd24501f92509aacf4cb8b1339d50c9c1240935dd08b',
    nonce: 'ac93a1a6145299bde902f21a',
    clear: '2d71bcfa914e4ac045b2aa60955fad24',
    associated: '1e0889016f67601c8ebea4943bc23ad6',
    text: '8995ae2e6df3dbf96fac7b7137bae67f',
    tag: 'eca5aa77d51d4a0a14d9c51e1da474ab',
  },
  {
    name: 'CAVP, 408 bits of text, 384 associated',
    key: '463b412911767d57a0b33969e674ffe7845d313b88c6fe312f3d724be68e1fca',
    nonce: '611ce6f9a6880750de7da6cb',
    clear: 'e7d1dcf668e2876861940e012fe52a98dacbd78ab63c08842cc9801ea581682ad54af0c34d0d7f6f59e8ee0bf4900e0fd85042',
    associated: '0a682fbc6192e1b47a5e0868787ffdafe5a50cead3575849990cdd2ea9b3597749403efb4a56684f0c6bde352d4aeec5',
    text: '8886e196010cb3849d9c1a182abe1eeab0a5f3ca423c3669a4a8703c0f146e8e956fb122e0d721b869d2b6fcd4216d7d4d3758',
    tag: '2469cecd70fd98fec9264f71df1aee9a',
  },
  {
    name: 'CAVP, to be opened, no text',
    key: 'f5a2b27c74355872eb3ef6c5feafaa740e6ae990d9d48c3bd9bb8235e589f010',
    nonce: '58d2240f580a31c1d24948e9',
    clear: '',
    associated: '',
    text: '',
    tag: '15e051a5e4a5f5da6cea92e2ebee5bac',
  },
];

const bytes = (hex: string) => Buffer.from(hex, 'hex');
const boxOf = ({ nonce, text, tag }: Pick<Vector, 'nonce' | 'text' | 'tag'>) => ({
  nonce: bytes(nonce).toString('base64'),
  text: bytes(text).toString('base64'),
  tag: bytes(tag).toString('base64'),
});

describe('AES-256-GCM', () => {
  it.each(vectors)('opens $name', (vector) => {
    const clear = openSealed(bytes(vector.key), boxOf(vector), bytes(vector.associated));
    expect(clear?.toString('hex')).toBe(vector.clear);
  });

  it('refuses the vector that CAVP marks as to be refused (gcmDecrypt256.rsp, no text, count 1)', () => {
    const box = boxOf({ nonce: '51e43385bf533e168427e1ad', text: '', tag: '38fe845c66e66bdd884c2aecafd280e6' });
    const key = bytes('e5a8123f2e2e007d4e379ba114a2fb66e6613f57c72d4e4f024964053028a831');
    expect(openSealed(key, box, Buffer.alloc(0))).toBeNull();
  });

  it.each(vectors)('refuses $name with any single bit of it changed', (vector) => {
    for (const part of ['nonce', 'text', 'tag', 'associated', 'key'] as const) {
      const whole = bytes(vector[part]);
      for (let bit = 0; bit < whole.length * 8; bit += 7) {
        const changed = Buffer.from(whole);
        changed[bit >> 3] = (changed[bit >> 3] ?? 0) ^ (1 << (bit & 7));
        const other = { ...vector, [part]: changed.toString('hex') };
        expect([part, bit, openSealed(bytes(other.key), boxOf(other), bytes(other.associated))]).toEqual([
          part,
          bit,
          null,
        ]);
      }
    }
  });
});

describe('sealing', () => {
  it('is undone by opening, and draws another nonce each time', () => {
    const key = randomBytes(32);
    const associated = about('code', 'a');
    const boxes = Array.from({ length: 200 }, () => seal(key, Buffer.from('30417'), associated));
    for (const box of boxes) expect(openSealed(key, box, associated)?.toString()).toBe('30417');
    expect(new Set(boxes.map((box) => box.nonce)).size).toBe(200);
    expect(new Set(boxes.map((box) => box.text)).size).toBeGreaterThan(190);
    expect(Buffer.from(boxes[0]?.nonce ?? '', 'base64')).toHaveLength(12);
  });

  it('keeps the parts of what it is about apart', () => {
    expect(about('ab', 'c').equals(about('a', 'bc'))).toBe(false);
    expect(about('a","b').equals(about('a', 'b'))).toBe(false);
  });
});
