import { useSyncExternalStore } from 'react';

/** State that outlives a page: where a person was in a list, the last tool set, the theme. */
export interface Remembered<T> {
  readonly get: () => T;
  readonly set: (value: T) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

export function remembered<T>(
  name: string,
  initial: T,
  storage: Storage = window.localStorage,
): Remembered<T> {
  const key = `studbook.${name}`;
  const listeners = new Set<() => void>();
  let value = read<T>(storage, key) ?? initial;
  return {
    get: () => value,
    set: (next) => {
      value = next;
      storage.setItem(key, JSON.stringify(next));
      for (const listener of listeners) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** Text left by an older version that can't be read is forgotten: nothing of the register is kept here. */
export function read<T>(storage: Storage, key: string): T | null {
  const text = storage.getItem(key);
  if (text === null) return null;
  try {
    return JSON.parse(text) as T;
  } catch {
    storage.removeItem(key);
    return null;
  }
}

export function useRemembered<T>(store: Remembered<T>): [T, (value: T) => void] {
  return [useSyncExternalStore(store.subscribe, store.get), store.set];
}
