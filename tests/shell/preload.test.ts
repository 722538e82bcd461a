// The one object that the page is given: complete, frozen, and nothing of Electron in it.
import { beforeAll, describe, expect, it, vi } from 'vitest';
import type { Bridge } from '../../app/contract/bridge.ts';
import { channelNames, eventNames } from '../../app/contract/channel-names.ts';

type Listener = (event: unknown, payload: unknown) => void;

const electron = vi.hoisted(() => ({
  exposed: new Map<string, unknown>(),
  listeners: new Map<string, Set<Listener>>(),
  invoked: [] as unknown[][],
}));
vi.mock('electron', () => ({
  contextBridge: { exposeInMainWorld: (name: string, value: unknown) => void electron.exposed.set(name, value) },
  ipcRenderer: {
    invoke: async (...args: unknown[]) => {
      electron.invoked.push(args);
      return { ok: true, value: 'answer' };
    },
    on: (name: string, listener: Listener) => {
      const set = electron.listeners.get(name) ?? new Set();
      electron.listeners.set(name, set.add(listener));
    },
    removeListener: (name: string, listener: Listener) => void electron.listeners.get(name)?.delete(listener),
  },
}));

let bridge: Bridge;
beforeAll(async () => {
  await import('../../app/preload.ts');
  bridge = electron.exposed.get('lotwright') as Bridge;
});

describe('the bridge', () => {
  it('is the only thing exposed, and has a function for each channel and event and no more', () => {
    expect([...electron.exposed.keys()]).toEqual(['lotwright']);
    expect(Object.keys(bridge)).toEqual(['ask', 'on']);
    expect(Object.keys(bridge.ask)).toEqual([...channelNames]);
    expect(Object.keys(bridge.on)).toEqual([...eventNames]);
  });

  it('is frozen through and through', () => {
    for (const part of [bridge, bridge.ask, bridge.on]) expect(Object.isFrozen(part)).toBe(true);
  });

  it('asks the channel of its name with the one thing it is given', async () => {
    const ask = bridge.ask['lot:read'] as (...args: unknown[]) => Promise<unknown>;
    expect(await ask({ a: 1 }, 'more')).toEqual({ ok: true, value: 'answer' });
    expect(electron.invoked).toEqual([['lot:read', { a: 1 }]]);
  });

  it('hands on the payload of an event without Electron’s own event, until it is told to stop', () => {
    const heard: unknown[][] = [];
    const stop = bridge.on['menu:chosen']((...args: unknown[]) => void heard.push(args));
    const send = () => {
      for (const listener of electron.listeners.get('menu:chosen') ?? [])
        listener({ sender: 'secret' }, { command: 'lot' });
    };
    send();
    expect(stop()).toBeUndefined();
    send();
    expect(heard).toEqual([[{ command: 'lot' }]]);
  });
});
