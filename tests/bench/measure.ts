/** What one bench found out. */
export interface Measured {
  readonly name: string;
  /** What was done and counted, so that the figure can be read alone. */
  readonly what: string;
  readonly unit: string;
  /** Middle of the rounds, and the best of them: on a machine that does other work too, the best says more. */
  readonly median: number;
  readonly best: number;
  readonly rounds: number;
  readonly goal: string | null;
  /** Whether the best round reaches the goal; null without one. */
  readonly reached: boolean | null;
}

interface Goal {
  readonly text: string;
  readonly reached: (best: number) => boolean;
}

export const atLeast = (limit: number, text: string): Goal => ({ text, reached: (best) => best >= limit });
export const below = (limit: number, text: string): Goal => ({ text, reached: (best) => best < limit });

interface Bench {
  readonly name: string;
  readonly what: string;
  readonly unit: string;
  readonly rounds: number;
  /** Turns the processor time of one round, s, into the figure. */
  readonly figure: (seconds: number) => number;
  readonly better: 'more' | 'less';
  readonly goal?: Goal;
}

/** Processor time of this process, s: what other programs take doesn't count, garbage collection does. */
function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

export async function measure(bench: Bench, round: () => unknown): Promise<Measured> {
  const { name, what, unit, rounds, figure, better, goal } = bench;
  await round();
  const figures: number[] = [];
  for (let done = 0; done < rounds; done += 1) {
    const start = processorSeconds();
    await round();
    figures.push(figure(processorSeconds() - start));
  }
  const rising = figures.toSorted((a, b) => a - b);
  const best = (better === 'more' ? rising.at(-1) : rising[0]) ?? Number.NaN;
  return {
    name,
    what,
    unit,
    median: rising[Math.floor(rising.length / 2)] ?? Number.NaN,
    best,
    rounds,
    goal: goal?.text ?? null,
    reached: goal === undefined ? null : goal.reached(best),
  };
}

/** Figures taken on the clock by whoever did the work, held against a limit. */
export function onTheClock(
  name: string,
  what: string,
  unit: string,
  figures: number[],
  limit: number,
): Measured {
  const rising = figures.toSorted((a, b) => a - b);
  const best = rising[0] ?? Number.NaN;
  return {
    name,
    what,
    unit,
    best,
    median: rising[Math.floor(rising.length / 2)] ?? Number.NaN,
    rounds: figures.length,
    goal: `below ${limit}`,
    reached: best < limit,
  };
}
