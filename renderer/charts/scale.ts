const STEPS = [1, 2, 2.5, 5, 10];

/** Round marks from zero to just above the highest value, four to six of them. */
export function marksTo(highest: number): number[] {
  if (!(highest > 0)) return [0, 1];
  const rough = highest / 4;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = (STEPS.find((each) => each * power >= rough) ?? 10) * power;
  const count = Math.ceil(highest / step);
  return Array.from({ length: count + 1 }, (_, index) => Number((index * step).toPrecision(10)));
}

/** Evenly spaced marks between two moments. */
export function marksBetween(first: number, last: number, count: number): number[] {
  if (first === last) return [first];
  return Array.from({ length: count }, (_, index) => first + ((last - first) * index) / (count - 1));
}
