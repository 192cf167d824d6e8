import { remembered } from './remember.ts';

export type Theme = 'as the system' | 'light' | 'dark';

export const theme = remembered<Theme>('theme', 'as the system');

export function applyTheme(): void {
  const chosen = theme.get();
  if (chosen === 'as the system') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = chosen;
}
