import type { Span } from './problem.ts';

interface Busy {
  readonly from: number;
  readonly until: number;
  readonly area: number;
}

/** What one part or one crew is promised to, in order of time. */
export interface Calendar {
  /** First start at or after `from` at which work of this length fits; null before `until` has room for none. */
  fit(from: number, length: number, until: number, area: number): number | null;
  take(from: number, until: number, area: number): void;
}

/**
 * Calendar of something that is in one place at a time and needs a while between two areas.
 *
 * @param free when it is there at all, in order of time, not overlapping
 * @param travel steps between two areas, whole, at least 0
 * @returns calendar without a promise
 * @example calendarOf([{ from: 0, until: 10 }], 0).fit(3, 4, 10, 0) // 3
 * @source rule of this program
 */
export function calendarOf(free: readonly Span[], travel: number): Calendar {
  const busy: Busy[] = [];

  /** Place of the first promise that ends after a step. */
  function after(step: number): number {
    let low = 0;
    let high = busy.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((busy[middle]?.until ?? 0) <= step) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  const apart = (one: Busy | undefined, area: number) =>
    one === undefined || one.area === area ? 0 : travel;

  function fitIn(span: Span, from: number, length: number, until: number, area: number): number | null {
    const last = Math.min(span.until, until);
    let start = Math.max(from, span.from);
    for (let place = after(start); start + length <= last; place += 1) {
      const before = busy[place - 1];
      if (before !== undefined) start = Math.max(start, before.until + apart(before, area));
      const next = busy[place];
      if (next === undefined || start + length + apart(next, area) <= next.from) {
        return start + length <= last ? start : null;
      }
      start = Math.max(start, next.until);
    }
    return null;
  }

  return {
    fit(from, length, until, area) {
      for (const span of free) {
        if (span.until <= from) continue;
        const start = fitIn(span, from, length, until, area);
        if (start !== null) return start;
      }
      return null;
    },
    take(from, until, area) {
      busy.splice(after(from), 0, { from, until, area });
    },
  };
}
