import { useEffect, useState } from 'react';
import type { FieldValues, UseFormReturn } from 'react-hook-form';
import { read } from '../app/remember.ts';

const SETTLE_MS = 250;

/** A form's unsaved content, kept on this PC until it is saved or thrown away. */
export function draftOf<T>(name: string): T | null {
  return read<T>(window.localStorage, `studbook.draft.${name}`);
}

export function useDraft<T extends FieldValues>(name: string, form: UseFormReturn<T>) {
  const key = `studbook.draft.${name}`;
  const [found] = useState(() => window.localStorage.getItem(key) !== null);
  const [kept, setKept] = useState(found);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const watching = form.watch((values) => {
      clearTimeout(timer);
      timer = setTimeout(() => window.localStorage.setItem(key, JSON.stringify(values)), SETTLE_MS);
    });
    return () => {
      watching.unsubscribe();
      clearTimeout(timer);
    };
  }, [form, key]);
  const drop = () => {
    window.localStorage.removeItem(key);
    setKept(false);
  };
  return { restored: found && kept, drop };
}
