interface LoadBarsProps {
  /** N, bolt 1 first. */
  readonly loads: readonly number[];
  /** Measured loads by bolt, N. */
  readonly measured: ReadonlyMap<number, number>;
  readonly target: number | null;
  readonly limit: number | null;
  /** Top of the drawing, N; the same for plans side by side. */
  readonly highest: number;
}

const WIDTH = 260;
const HEIGHT = 110;

/** A bar for each bolt against the load to set and the most one bolt may carry; the numbers stand in the table. */
export function LoadBars({ loads, measured, target, limit, highest }: LoadBarsProps) {
  const top = Math.max(highest, target ?? 0, ...measured.values()) * 1.05;
  if (loads.length === 0 || !(top > 0)) return null;
  const step = WIDTH / loads.length;
  const y = (load: number) => HEIGHT - (load / top) * HEIGHT;
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      {loads.map((load, index) => (
        <rect
          // biome-ignore lint/suspicious/noArrayIndexKey: a bolt is its number
          key={index}
          x={index * step + step * 0.15}
          y={y(load)}
          width={step * 0.7}
          height={HEIGHT - y(load)}
          fill={limit !== null && load > limit ? 'var(--refusal)' : 'var(--act)'}
        />
      ))}
      {[...measured].map(([bolt, load]) => {
        const x = (bolt - 0.5) * step;
        return (
          <path
            key={bolt}
            d={`M ${x - 3} ${y(load) - 3} l 6 6 m 0 -6 l -6 6`}
            stroke="var(--ink)"
            strokeWidth="1.8"
          />
        );
      })}
      {target !== null && (
        <line x1="0" x2={WIDTH} y1={y(target)} y2={y(target)} stroke="var(--ink)" strokeDasharray="4 3" />
      )}
      {limit !== null && (
        <line x1="0" x2={WIDTH} y1={y(limit)} y2={y(limit)} stroke="var(--refusal)" strokeWidth="1.5" />
      )}
    </svg>
  );
}
