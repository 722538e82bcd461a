// Gives the page its one object: a named function for each channel, a named subscription for each event. Carries no schema,
// hands out nothing of Electron, and decides nothing; the main process judges every call.
import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron';
import type { Bridge } from './contract/bridge.ts';
import { channelNames, eventNames } from './contract/channel-names.ts';

function ask(channel: string): (input: unknown) => Promise<unknown> {
  return (input) => ipcRenderer.invoke(channel, input);
}

/** The page's function gets the payload only: Electron's event would hand it the sender. */
function subscription(name: string): (listener: (payload: unknown) => void) => () => void {
  return (listener) => {
    const pass = (_event: IpcRendererEvent, payload: unknown) => listener(payload);
    ipcRenderer.on(name, pass);
    return () => void ipcRenderer.removeListener(name, pass);
  };
}

function eachNamed<Made>(names: readonly string[], make: (name: string) => Made): Readonly<Record<string, Made>> {
  return Object.freeze(Object.fromEntries(names.map((name) => [name, make(name)])));
}

const bridge = Object.freeze({ ask: eachNamed(channelNames, ask), on: eachNamed(eventNames, subscription) });

contextBridge.exposeInMainWorld('lotwright', bridge as unknown as Bridge);
