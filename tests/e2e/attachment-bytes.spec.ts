// The bytes of photographs and documents between page and main process: they arrive as they were, in both directions, up to the largest.
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { makeShop, makeVehicle } from '../helpers/vehicle-maker.ts';
import { expect, test } from './fixtures.ts';
import { records } from './lay-records.ts';

const fleet = [
  makeVehicle('2026-02-16', { id: 'kept-one', identity: { stockNumber: 'G-1', vin: '', vinReason: 'none' } }),
];
test.use({ fleet: records(makeShop(), fleet) });

test('a photograph with its two copies goes in and comes back byte for byte', async ({ page, program }) => {
  const outcome = await page.evaluate(async () => {
    const draw = async (width: number, height: number, type: string) => {
      const canvas = new OffscreenCanvas(width, height);
      const pen = canvas.getContext('2d');
      if (!pen) throw new Error('No canvas.');
      for (let at = 0; at < width; at += 1) {
        pen.fillStyle = `hsl(${at % 360} 60% 50%)`;
        pen.fillRect(at, 0, 1, height);
      }
      return new Uint8Array(await (await canvas.convertToBlob({ type })).arrayBuffer());
    };
    const [bytes, small, print] = [
      await draw(1800, 1350, 'image/png'),
      await draw(320, 240, 'image/jpeg'),
      await draw(1600, 1200, 'image/jpeg'),
    ];
    const { ask } = window.lotwright;
    const opened = await ask['vehicle:open']({ id: 'kept-one' });
    if (!opened.ok) throw new Error(opened.error.code);
    const { revision, today } = opened.value;
    const text = { name: 'front.png', caption: 'Front', on: today };
    const added = await ask['attachment:add']({ id: 'kept-one', baseRevision: revision, bytes, small, print, ...text });
    if (!added.ok) throw new Error(JSON.stringify(added.error));
    const [attachment] = added.value.view.vehicle.attachments;
    if (!attachment) throw new Error('Nothing was added.');
    const same = async (size: 'small' | 'whole', sent: Uint8Array) => {
      const read = await ask['attachment:read']({ id: 'kept-one', attachmentId: attachment.id, size });
      if (!read.ok) throw new Error(JSON.stringify(read.error));
      const { bytes } = read.value;
      return (
        bytes instanceof Uint8Array && bytes.length === sent.length && bytes.every((byte, at) => byte === sent[at])
      );
    };
    const whole = Array.from(bytes.subarray(0, 64));
    return { attachment, whole, isSame: [await same('small', small), await same('whole', bytes)] };
  });
  expect(outcome.isSame).toEqual([true, true]);
  expect(outcome.attachment).toMatchObject({ kind: 'png', widthDots: 1800, heightDots: 1350, readers: 'workshop' });
  const folder = join(program.fleetFolder, 'attachments', 'kept-one');
  expect(await readdir(folder)).toHaveLength(3);
  const onDisk = await readFile(join(folder, `${outcome.attachment.sha256}.png`));
  expect(Array.from(onDisk.subarray(0, 64))).toEqual(outcome.whole);
});

test('a file as large as is kept goes in, a larger one is refused in a sentence, far larger calls are not read at all', async ({
  page,
}) => {
  const answers = await page.evaluate(async () => {
    const { ask } = window.lotwright;
    const answers: string[] = [];
    for (const size of [25_000_000, 25_000_001, 40_000_000]) {
      const bytes = new Uint8Array(size);
      bytes.set(new TextEncoder().encode('%PDF-1.4\n'));
      bytes.set(new TextEncoder().encode('\n%%EOF\n'), size - 7);
      const opened = await ask['vehicle:open']({ id: 'kept-one' });
      if (!opened.ok) throw new Error(opened.error.code);
      const { revision, today } = opened.value;
      const text = { name: 'large.pdf', caption: '', on: today };
      const copies = { small: null, print: null };
      const added = await ask['attachment:add']({ id: 'kept-one', baseRevision: revision, bytes, ...copies, ...text });
      answers.push(
        added.ok ? 'kept' : `${added.error.code}: ${added.error.problems[0]?.sentence ?? added.error.detail}`,
      );
    }
    return answers;
  });
  expect(answers).toEqual([
    'kept',
    'refused: The file has 26 MB; at most 25 MB are kept. Make it smaller, then add it.',
    'bad-request: This is too much for one step.',
  ]);
});
