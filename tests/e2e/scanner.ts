// A bar code scanner that types: real keys from the system's side of the window, one right after the other, ended by Enter. All of them are
// on their way before anything else happens, so that no test waits on how fast this machine is.
import type { Program } from './fixtures.ts';

export async function scan({ app }: Pick<Program, 'app'>, code: string): Promise<void> {
  await app.evaluate(({ BrowserWindow }, scanned) => {
    const page = BrowserWindow.getAllWindows()[0]?.webContents;
    if (page === undefined) throw new Error('There is no window to scan into.');
    for (const keyCode of [...scanned, 'Enter']) {
      const modifiers: 'shift'[] = /^[A-Z]$/.test(keyCode) ? ['shift'] : [];
      page.sendInputEvent({ type: 'keyDown', keyCode, modifiers });
      page.sendInputEvent({ type: 'char', keyCode: keyCode === 'Enter' ? '\r' : keyCode, modifiers });
      page.sendInputEvent({ type: 'keyUp', keyCode, modifiers });
    }
  }, code);
}
