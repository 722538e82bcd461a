// The dealer's logo from Setup to paper: what is taken, what is refused with a sentence, and sheets that carry it and stay good.
import { access, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestDesk, type TestDesk, takeInOf } from '../helpers/open-test-desk.ts';
import { checkSoundness } from '../helpers/read-pdf.ts';

function drawn(width: number, height: number, seen = 255): Buffer {
  const picture = new PNG({ width, height });
  for (let at = 0; at < picture.data.length; at += 4) picture.data.set([31, 78, 107, seen], at);
  return PNG.sync.write(picture, seen === 255 ? { colorType: 2, inputHasAlpha: true } : {});
}

let desk: TestDesk;
beforeEach(async () => {
  desk = await openTestDesk();
});
afterEach(() => desk.discard());

const fleet = (name: string) => join(desk.folder, 'fleet', name);
const set = (bytes: Buffer | null) => desk.ask('shop:set-logo', { base64: bytes?.toString('base64') ?? null });
async function refusal(bytes: Buffer): Promise<string> {
  const error = await desk.refused('shop:set-logo', { base64: bytes.toString('base64') });
  return error.problems[0]?.sentence ?? '';
}

describe('the logo', () => {
  it('is kept as it is, shown, and taken away again', async () => {
    const bytes = drawn(40, 20);
    expect((await set(bytes)).logo).toMatchObject({ kind: 'png', width: 40, height: 20 });
    expect((await readFile(fleet('logo.png'))).equals(bytes)).toBe(true);
    expect((await desk.ask('shop:logo', {})).logo?.base64).toBe(bytes.toString('base64'));
    expect(await set(null)).toEqual({ logo: null });
    await expect(access(fleet('logo.png'))).rejects.toThrow();
  });

  it('is refused with a sentence where it is no picture, cut off or too large, and the old one stays', async () => {
    const good = drawn(40, 20);
    await set(good);
    expect(await refusal(Buffer.from('%PDF-1.7'))).toContain('no picture');
    expect(await refusal(good.subarray(0, good.length - 20))).toContain('cut off');
    expect(await refusal(drawn(40, 20, 128))).toContain('see-through');
    expect(await refusal(drawn(4001, 2))).toContain('4000 dots');
    expect(await refusal(Buffer.concat([good, Buffer.alloc(600_000)]))).toContain('at most 500 kB');
    expect(await refusal(Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 4, 0, 0]))).toContain('cut off');
    expect((await readFile(fleet('logo.png'))).equals(good)).toBe(true);
  });

  it('stands on every page, once in the file', async () => {
    const taken = await desk.ask('vehicle:take-in', takeInOf('LW-1001', '1M8GDM9A3KP000009'));
    const ids = [taken.view.vehicle.id];
    const print = async () => {
      const [file] = await desk.ask('sheet:print', { kind: 'job-sheet', vehicleIds: ids });
      return readFile(fleet(`sheets/${file?.fileName}`));
    };
    const count = (bytes: Buffer) => bytes.toString('latin1').split('/Subtype /Image').length - 1;
    expect(count(await print())).toBe(0);
    await set(drawn(40, 20));
    const plain = await print();
    checkSoundness(plain);
    expect(count(plain)).toBe(1);
    // Damaged by another program: the sheet is good without it.
    await writeFile(fleet('logo.png'), 'torn');
    expect(count(await print())).toBe(0);
  });

  it('is in a backup', async () => {
    // The backup of the day waits for the first rows.
    await desk.ask('lot:read', {});
    await set(drawn(40, 20));
    await desk.ask('fleet:back-up', {});
    const made = await readdir(fleet('backups'), { recursive: true });
    expect(made.some((path) => path.endsWith('logo.png'))).toBe(true);
  });
});
