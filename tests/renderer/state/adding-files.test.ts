// Files added one after the other: what is refused stays with its reason and its file, and nobody adds under another's name.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Desk } from '../../../app/contract/views.ts';
import { addFiles, addingStore, leaveOut, tryAgain, waitingIn } from '../../../renderer/state/adding-files.ts';
import { deskStore } from '../../../renderer/state/desk-store.ts';

type Asked = { readonly id: string; readonly name: string; readonly bytes: Uint8Array };

const deskOf = (person: string) =>
  ({
    shop: null,
    person: { id: person },
    signIn: { isLocked: false, signedInId: null },
    seesMoney: true,
  }) as unknown as Desk;

const refused = (sentence: string) => ({
  ok: false,
  error: { code: 'refused', detail: '', problems: [{ field: 'file', sentence }] },
});

let asked: Asked[] = [];
let answer: (input: Asked) => unknown = () => undefined;

function accepted({ id }: Asked) {
  const view = { vehicle: { id }, revision: asked.length, savedAt: '2026-03-18T09:00:00.000Z' };
  return { ok: true, value: { view, desk: deskStore.read() } };
}

beforeEach(() => {
  asked = [];
  answer = accepted;
  deskStore.set(deskOf('mara'));
  addingStore.set({ files: [], done: 0, added: 0 });
  const add = async (input: Asked) => {
    asked.push(input);
    return answer(input);
  };
  vi.stubGlobal('window', { lotwright: { ask: { 'attachment:add': add, 'vehicle:open': async () => refused('') } } });
});
afterEach(() => vi.unstubAllGlobals());

const file = (name: string, content: string | Uint8Array<ArrayBuffer> = name) => new File([content], name);
const settled = () => vi.waitFor(() => expect(waitingIn(addingStore.read())).toEqual([]));

describe('files that are added', () => {
  it('go to their vehicle in their order, with their bytes, and leave the list', async () => {
    addFiles('vehicle-one', [file('a.jpg'), file('b.pdf')], '2026-03-18');
    addFiles('vehicle-two', [file('c.png')], '2026-03-18');
    await settled();
    expect(asked.map(({ id, name }) => `${id} ${name}`)).toEqual([
      'vehicle-one a.jpg',
      'vehicle-one b.pdf',
      'vehicle-two c.png',
    ]);
    expect(new TextDecoder().decode(asked[1]?.bytes)).toBe('b.pdf');
    expect(addingStore.read()).toEqual({ files: [], done: 0, added: 0 });
  });

  it('stay in the list with the reason where they are refused, while the others are added', async () => {
    answer = (input) => (input.name === 'b.heic' ? refused('This is a HEIC picture.') : accepted(input));
    addFiles('vehicle-one', [file('a.jpg'), file('b.heic'), file('c.jpg')], '2026-03-18');
    await settled();
    expect(asked).toHaveLength(3);
    expect(addingStore.read().files.map((one) => [one.file.name, one.refusal])).toEqual([
      ['b.heic', 'This is a HEIC picture.'],
    ]);
  });

  it('are tried again with the same file, or left out', async () => {
    answer = () => refused('Make room.');
    addFiles('vehicle-one', [file('a.jpg')], '2026-03-18');
    await settled();
    const [one] = addingStore.read().files;
    answer = accepted;
    tryAgain(one?.id ?? 0, '2026-03-18');
    await settled();
    expect(asked.map(({ name }) => name)).toEqual(['a.jpg', 'a.jpg']);
    expect(addingStore.read().files).toEqual([]);

    answer = () => refused('Make room.');
    addFiles('vehicle-one', [file('b.jpg')], '2026-03-18');
    await settled();
    leaveOut(addingStore.read().files[0]?.id ?? 0);
    expect(addingStore.read().files).toEqual([]);
  });

  it('are not even asked for where they are empty, too large or cannot be read', async () => {
    const large = Object.defineProperty(file('large.jpg'), 'size', { value: 25_000_001 });
    const gone = Object.assign(file('gone.jpg'), { arrayBuffer: () => Promise.reject(new Error('gone')) });
    addFiles('vehicle-one', [file('empty.jpg', ''), large, gone], '2026-03-18');
    await settled();
    expect(asked).toEqual([]);
    expect(addingStore.read().files.map(({ refusal }) => refusal)).toEqual([
      expect.stringMatching(/^The file is empty/),
      expect.stringMatching(/^The file has 26 MB; at most 25 MB are kept/),
      expect.stringMatching(/^The file could not be read/),
    ]);
  });

  it('are not added under the name of somebody who sits down meanwhile', async () => {
    answer = (input) => {
      deskStore.set(deskOf('tomas'));
      return accepted(input);
    };
    addFiles('vehicle-one', [file('a.jpg'), file('b.jpg')], '2026-03-18');
    await settled();
    expect(asked.map(({ name }) => name)).toEqual(['a.jpg']);
    expect(addingStore.read().files.map((one) => [one.file.name, one.refusal])).toEqual([
      ['b.jpg', expect.stringMatching(/^Somebody else sat down/)],
    ]);
    // Tried again, it is the one who sits there now that adds it.
    answer = accepted;
    tryAgain(addingStore.read().files[0]?.id ?? 0, '2026-03-18');
    await settled();
    expect(asked.map(({ name }) => name)).toEqual(['a.jpg', 'b.jpg']);
  });

  it('are added all the same where the vehicle has changed meanwhile', async () => {
    let isFirst = true;
    answer = (input) => {
      if (!isFirst) return accepted(input);
      isFirst = false;
      return { ok: false, error: { code: 'stale-revision', detail: '', problems: [] } };
    };
    addFiles('vehicle-one', [file('a.jpg')], '2026-03-18');
    await settled();
    expect(asked).toHaveLength(2);
    expect(addingStore.read().files).toEqual([]);
  });
});
