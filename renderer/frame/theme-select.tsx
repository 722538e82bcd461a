// Light or dark, or as the system has it.
import type { Desk, Theme } from '../../app/contract/views.ts';
import { askDesk } from '../state/desk-store.ts';
import { frameText } from '../text/frame.ts';

const themes: readonly Theme[] = ['system', 'light', 'dark'];

export function ThemeSelect({ desk }: { readonly desk: Desk }) {
  return (
    <label className="bar-field">
      <span className="unseen">{frameText.theme}</span>
      <select
        value={desk.theme}
        title={frameText.theme}
        onChange={(event) => {
          const theme = themes.find((candidate) => candidate === event.currentTarget.value);
          if (theme !== undefined) void askDesk('desk:set-theme', { theme });
        }}
      >
        {themes.map((theme) => (
          <option key={theme} value={theme}>
            {frameText.themes[theme]}
          </option>
        ))}
      </select>
    </label>
  );
}
