// A keyboard that counts what a person would press. Presses keys only; knows nothing of the screens.
import type { Page } from '@playwright/test';

export type CountingKeyboard = {
  /** One key, or several held together: 'Control+Enter' counts as two. */
  press(keys: string): Promise<void>;
  /** Text, one key a character. */
  type(text: string): Promise<void>;
  count(): number;
};

export function countingKeyboard(page: Page): CountingKeyboard {
  let pressed = 0;
  return {
    async press(keys) {
      pressed += keys.split('+').length;
      await page.keyboard.press(keys);
    },
    async type(text) {
      for (const character of text) {
        // A capital is two keys.
        pressed += /[A-Z]/.test(character) ? 2 : 1;
        await page.keyboard.press(character === ' ' ? 'Space' : character);
      }
    },
    count: () => pressed,
  };
}
