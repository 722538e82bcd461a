// Keys from pass phrases against RFC 7914 section 12. Its fourth vector (N = 1,048,576) is left out: it takes a gigabyte of memory.
import { describe, expect, it } from 'vitest';
import { deriveKey, phraseBytes, scryptCostSchema, usualScryptCost } from '../../app/storage/vault/scrypt-key.ts';

const vectors: readonly (readonly [secret: string, salt: string, N: number, r: number, p: number, key: string])[] = [
  [
    '',
    '',
    16,
    1,
    1,
    '77d6576238657b203b19ca42c18a0497f16b4844e3074ae8dfdffa3fede21442fcd0069ded0948f8326a753a0fc81f17e8d3e0fb2e0d3628cf35e20c38d18906',
  ],
  [
    'password',
    'NaCl',
    1024,
    8,
    16,
    'fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b3731622eaf30d92e22a3886ff109279d9830dac727afb94a83ee6d8360cbdfa2cc0640',
  ],
  [
    'pleaseletmein',
    'SodiumChloride',
    16384,
    8,
    1,
    '7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2d5432955613f0fcf62d49705242a9af9e61e85dc0d651e40dfcf017b45575887',
  ],
];

describe('scrypt', () => {
  it.each(vectors)('of “%s” and “%s” with N=%i, r=%i, p=%i is that of RFC 7914', async (secret, salt, N, r, p, key) => {
    const derived = await deriveKey(phraseBytes(secret), Buffer.from(salt), { N, r, p }, 64);
    expect(derived.toString('hex')).toBe(key);
  });

  it('runs with the parameters that are used, which are no weaker than N=2^17, r=8, p=1', async () => {
    expect(usualScryptCost.N).toBeGreaterThanOrEqual(2 ** 17);
    expect(usualScryptCost).toMatchObject({ r: 8, p: 1 });
    const derived = await deriveKey(Buffer.from('x'), Buffer.alloc(16), usualScryptCost);
    expect(derived).toHaveLength(32);
  });

  it.each([
    { N: 1000, r: 8, p: 1 },
    { N: 1, r: 8, p: 1 },
    { N: 2 ** 21, r: 1, p: 1 },
    { N: 2 ** 20, r: 32, p: 1 },
    { N: 16, r: 0, p: 1 },
    { N: 16, r: 1, p: 1000 },
  ])('is refused with N=$N, r=$r, p=$p: no power of two, or more than the program gives', (cost) => {
    expect(scryptCostSchema.safeParse(cost).success).toBe(false);
  });
});
