import type { ReactNode } from 'react';
import type { RequestFailure } from '../app/ask.ts';
import { Busy } from './busy.tsx';
import { Failure } from './failure.tsx';

interface Asking<T> {
  readonly data: T | undefined;
  readonly error: RequestFailure | null;
}

interface AskedProps<T> {
  readonly asking: Asking<T>;
  readonly what: string;
  readonly children: (value: T) => ReactNode;
}

/** The three faces of an answer: not there yet, refused, there. */
export function Asked<T>({ asking, what, children }: AskedProps<T>) {
  if (asking.error) return <Failure error={asking.error.error} />;
  if (asking.data === undefined) return <Busy what={`Reading ${what}`} />;
  return <>{children(asking.data)}</>;
}
