import type { Source } from './source.ts';
import { BODIES } from './sources-bodies.ts';
import { BOOKS } from './sources-books.ts';
import { UNTRACED } from './sources-untraced.ts';

const SOURCES = { ...BODIES, ...BOOKS, ...UNTRACED } as const;

export type SourceId = keyof typeof SOURCES;

export function sourceOf(id: SourceId): Source {
  return SOURCES[id];
}

/** The work a source belongs to: editions and companions of one book are one work. */
export function workOf(id: SourceId): string {
  return sourceOf(id).work ?? id;
}
