import { type KeyboardEvent, useEffect, useRef } from 'react';

/** "/" puts the cursor into the search of the list on screen, unless someone is typing. */
export function useSlash() {
  const search = useRef<HTMLInputElement>(null);
  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent) => {
      const target = event.target as HTMLElement;
      const typing = /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName);
      if (event.key !== '/' || typing || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      search.current?.focus();
      search.current?.select();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);
  return search;
}

/** Arrow keys walk from the search through the links marked `data-entry`; Enter follows the one in focus. */
export function walkEntries(event: KeyboardEvent<HTMLElement>): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
  const target = event.target as HTMLElement;
  if (target.tagName === 'SELECT') return;
  const entries = [...event.currentTarget.querySelectorAll<HTMLElement>('[data-entry]')];
  const at = entries.indexOf(target);
  const next = event.key === 'ArrowDown' ? at + 1 : at - 1;
  event.preventDefault();
  if (next < 0) event.currentTarget.querySelector<HTMLElement>('input[type="search"]')?.focus();
  else entries[Math.min(next, entries.length - 1)]?.focus();
}
