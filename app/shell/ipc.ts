// The only file that imports ipcMain: registers every channel of the contract in one loop. Decides nothing itself.
import { type BrowserWindow, type IpcMainInvokeEvent, ipcMain } from 'electron';
import { type ChannelName, channels } from '../contract/channels.ts';
import type { DeskSession } from '../services/desk-session.ts';
import { answerCall, type Sender } from './answer-call.ts';
import type { Log } from './log.ts';
import type { OpenedDesk } from './open-desk.ts';

/** Newer Electrons say null, older ones throw, when the asking frame is gone. */
function senderOf(event: IpcMainInvokeEvent): Sender | null {
  try {
    const frame = event.senderFrame;
    if (!frame) return null;
    return { contentsId: event.sender.id, isMainFrame: frame.parent === null, url: frame.url };
  } catch {
    return null;
  }
}

export function registerChannels(options: {
  readonly window: BrowserWindow;
  /** Calls wait for it. Null: the person quits instead. */
  readonly desk: Promise<OpenedDesk<DeskSession> | null>;
  readonly log: Log;
  readonly checksOutput: boolean;
}): void {
  const { window, desk, log, checksOutput } = options;
  const answering = {
    windowContentsId: () => (window.isDestroyed() ? null : window.webContents.id),
    session: async () => (await desk)?.session ?? null,
    log,
    checksOutput,
  };
  for (const channel of Object.keys(channels) as ChannelName[]) {
    ipcMain.handle(channel, (event, input: unknown) =>
      answerCall({ channel, input, sender: senderOf(event) }, answering),
    );
  }
}
