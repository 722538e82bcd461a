// One list of channels: the names the preload knows, the contract, what is registered and what answers are the same.
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { channelNames, eventNames } from '../../app/contract/channel-names.ts';
import { channels } from '../../app/contract/channels.ts';
import { events } from '../../app/contract/events.ts';
import { handlers } from '../../app/services/desk-session.ts';
import { registerChannels } from '../../app/shell/ipc.ts';
import { silentLog } from '../shell/silent-log.ts';

type Registered = (event: unknown, input: unknown) => Promise<unknown>;

const electron = vi.hoisted(() => ({ registered: new Map<string, Registered>() }));
vi.mock('electron', () => ({
  ipcMain: { handle: (name: string, handler: Registered) => void electron.registered.set(name, handler) },
}));

const contract = Object.keys(channels).sort();

beforeAll(() => {
  registerChannels({
    window: { isDestroyed: () => false, webContents: { id: 7 } } as never,
    desk: Promise.resolve({ session: { answer: async (name: string) => ({ ok: true, value: name }) } } as never),
    log: silentLog().log,
    checksOutput: false,
  });
});

describe('channels', () => {
  it('are named for the preload as in the contract', () => {
    expect([...channelNames].sort()).toEqual(contract);
    expect([...eventNames].sort()).toEqual(Object.keys(events).sort());
  });

  it('are all registered, and no other', () => {
    expect([...electron.registered.keys()].sort()).toEqual(contract);
  });

  it('are all answered by the desk', () => {
    expect(Object.keys(handlers).sort()).toEqual(contract);
  });

  it('have names of the form area:verb', () => {
    for (const name of [...contract, ...eventNames]) expect(name).toMatch(/^[a-z]+(-[a-z]+)*:[a-z]+(-[a-z]+)*$/);
  });

  it('take no path and no address', () => {
    const suspicious = /path|url|folder|directory|href|address/i;
    const fields = contract.flatMap((name) => {
      const { input } = channels[name as keyof typeof channels];
      return Object.keys('shape' in input ? input.shape : {}).map((field) => `${name} ${field}`);
    });
    expect(fields.filter((field) => suspicious.test(field.split(' ')[1] ?? ''))).toEqual([]);
    expect(fields.length).toBeGreaterThan(10);
  });

  it('refuse what they do not know beside what they ask for', () => {
    for (const name of contract) {
      const { input } = channels[name as keyof typeof channels];
      const judged = input.safeParse({ surprise: 1 });
      expect(judged.success, name).toBe(false);
    }
  });
});

describe('a registered channel', () => {
  const ask = (senderFrame: unknown, id = 7) =>
    electron.registered.get('lot:read')?.({ sender: { id }, senderFrame }, {});

  it('answers the main frame of our page', async () => {
    expect(await ask({ parent: null, url: 'app://lotwright/index.html' })).toEqual({ ok: true, value: 'lot:read' });
  });

  it('answers nobody else, and throws nothing', async () => {
    const gone = {
      get url(): string {
        throw new Error('Render frame was disposed');
      },
      parent: null,
    };
    const refusal = { ok: false, error: { code: 'not-allowed' } };
    expect(await ask(null)).toMatchObject(refusal);
    expect(await ask(gone)).toMatchObject(refusal);
    expect(await ask({ parent: {}, url: 'app://lotwright/index.html' })).toMatchObject(refusal);
    expect(await ask({ parent: null, url: 'about:blank' })).toMatchObject(refusal);
    expect(await ask({ parent: null, url: 'app://lotwright/index.html' }, 8)).toMatchObject(refusal);
  });
});
