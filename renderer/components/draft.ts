import { useEffect, useRef, useState } from 'react';
import type { FieldValues, UseFormReturn } from 'react-hook-form';
import { read } from '../app/remember.ts';

const SETTLE_MS = 250;

/** A form's unsaved content, kept on this PC until it is saved or thrown away; otherwise what it starts from. */
export function draftOf<T>(name: string, start: T): T {
  return completed(read<unknown>(window.localStorage, `studbook.draft.${name}`), start);
}

/** A draft kept by an earlier version lacks the fields added since; they come from what the form starts from. */
export function completed<T>(draft: unknown, start: T): T {
  if (!isGroup(draft) || !isGroup(start)) return draft === null || draft === undefined ? start : (draft as T);
  const names = new Set([...Object.keys(start), ...Object.keys(draft)]);
  return Object.fromEntries([...names].map((name) => [name, completed(draft[name], start[name])])) as T;
}

const isGroup = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export function useDraft<T extends FieldValues>(name: string, form: UseFormReturn<T>) {
  const key = `studbook.draft.${name}`;
  const [found] = useState(() => window.localStorage.getItem(key) !== null);
  const [kept, setKept] = useState(found);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => {
    const watching = form.watch((values) => {
      clearTimeout(timer.current);
      timer.current = setTimeout(() => window.localStorage.setItem(key, JSON.stringify(values)), SETTLE_MS);
    });
    return () => {
      watching.unsubscribe();
      clearTimeout(timer.current);
    };
  }, [form, key]);
  const drop = () => {
    // A form that is emptied first would be kept a moment later as if it had been typed.
    clearTimeout(timer.current);
    window.localStorage.removeItem(key);
    setKept(false);
  };
  return { restored: found && kept, drop };
}
