// Puts the theme on the document: the one chosen, or the one the system asks for at the time.
import type { Theme } from '../../app/contract/views.ts';

const systemIsDark = window.matchMedia('(prefers-color-scheme: dark)');
let chosen: Theme = 'system';

function apply(): void {
  const isDark = chosen === 'dark' || (chosen === 'system' && systemIsDark.matches);
  document.documentElement.dataset.theme = isDark ? 'dark' : 'light';
}
systemIsDark.addEventListener('change', apply);

export function applyTheme(theme: Theme): void {
  chosen = theme;
  apply();
}
