// A bar code scanner that types: real keys, one right after the other, ended by Enter. Waits for none of them, as no scanner does.
import type { Page } from '@playwright/test';

type Key = {
  readonly key: string;
  readonly code: string;
  readonly windowsVirtualKeyCode: number;
  readonly text: string;
};

function keyOf(character: string): Key {
  if (character === '\r') return { key: 'Enter', code: 'Enter', windowsVirtualKeyCode: 13, text: '\r' };
  const capital = character.toUpperCase();
  const isLetter = /[A-Z]/.test(capital);
  const isDigit = /\d/.test(capital);
  const code = isLetter ? `Key${capital}` : isDigit ? `Digit${capital}` : '';
  const windowsVirtualKeyCode = isLetter || isDigit ? capital.charCodeAt(0) : 0;
  return { key: character, code, windowsVirtualKeyCode, text: character };
}

export async function scan(page: Page, code: string): Promise<void> {
  const keyboard = await page.context().newCDPSession(page);
  const sent = [...code, '\r'].flatMap((character) => {
    const key = keyOf(character);
    return [
      keyboard.send('Input.dispatchKeyEvent', { type: 'keyDown', ...key }),
      keyboard.send('Input.dispatchKeyEvent', { type: 'keyUp', ...key, text: '' }),
    ];
  });
  await Promise.all(sent);
  await keyboard.detach();
}
