/** A repeatable source of numbers; the same seed and stream name give the same plant on every machine. */
export interface Random {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number;
  /** Standard normal. */
  normal(): number;
  chance(probability: number): boolean;
  pick<T>(choices: readonly [T, ...T[]]): T;
  /** One of the choices, by weight. */
  weighted<T>(choices: readonly (readonly [T, number])[]): T;
}

/** Each noun draws from a stream of its own, so that one more tool does not change every joint. */
export function randomStream(seed: number, stream: string): Random {
  const next = mulberry32(seed ^ fold(stream));
  const uniform = () => next() / 2 ** 32;
  const whole = (low: number, high: number) => low + Math.floor(uniform() * (high - low + 1));
  return {
    uniform,
    whole,
    // Box and Muller (1958); 1 − u keeps the logarithm away from zero.
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
    chance: (probability) => uniform() < probability,
    pick: (choices) => choices[whole(0, choices.length - 1)] ?? choices[0],
    weighted(choices) {
      const total = choices.reduce((sum, [, weight]) => sum + weight, 0);
      let rest = uniform() * total;
      for (const [choice, weight] of choices) {
        rest -= weight;
        if (rest < 0) return choice;
      }
      const last = choices.at(-1);
      if (last === undefined) throw new Error('nothing to choose from');
      return last[0];
    },
  };
}

/** FNV-1a, 32 bit: turns a stream's name into a number. */
function fold(text: string): number {
  let hash = 0x811c9dc5;
  for (const character of text) {
    hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193);
  }
  return hash >>> 0;
}

/** Tommy Ettinger's 32-bit generator (public domain): short, and good enough to invent a plant with. */
function mulberry32(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (mixed ^ (mixed >>> 14)) >>> 0;
  };
}
