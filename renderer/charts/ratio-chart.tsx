import { useMemo } from 'react';
import { CartesianGrid, ComposedChart, ReferenceLine, Scatter, Tooltip, XAxis, YAxis } from 'recharts';
import type { Opening } from '../../core/contract/forecast.ts';
import { useRegister } from '../app/register.ts';
import { sensible } from '../app/text/number.ts';
import { dayOf } from '../app/text/time.ts';
import { axisLine, axisText, ChartFrame } from './frame.tsx';
import { marksBetween, marksTo } from './scale.ts';

interface RatioChartProps {
  readonly openings: readonly Opening[];
  readonly finding: string;
  /** Ratio of common practice, drawn as a line. */
  readonly common: number;
  /** Least torque a set used in these openings could give, N·m; null where none is known. */
  readonly capacity: number | null;
  /** Opening that is read out beside the chart; its marks stand out. */
  readonly chosen: string | null;
}

interface Plotted {
  readonly at: number;
  readonly median: number;
  readonly lowest: number;
  readonly highest: number;
  /** Capacity over the torque that was installed before this opening. */
  readonly capacity: number | null;
  readonly chosen: boolean;
  readonly apart: boolean;
}

interface ShapeProps {
  readonly cx?: number | undefined;
  readonly cy?: number | undefined;
  readonly payload?: Plotted | undefined;
  readonly yAxis?: { readonly scale: (value: number) => number } | undefined;
}

const Key = ({ chosen = false, apart = false }: { readonly chosen?: boolean; readonly apart?: boolean }) => (
  <Middle
    cx={7}
    cy={7}
    payload={{ at: 0, median: 0, lowest: 0, highest: 0, capacity: null, chosen, apart }}
  />
);

/** A ring; a square where the opening stands apart from those like it. */
function Middle({ cx = 0, cy = 0, payload }: ShapeProps) {
  const stroke = payload?.chosen ? 'var(--act)' : 'var(--ink)';
  const width = payload?.chosen ? 3.5 : 2;
  return payload?.apart ? (
    <rect
      x={cx - 5}
      y={cy - 5}
      width="10"
      height="10"
      fill="var(--page)"
      stroke={stroke}
      strokeWidth={width}
    />
  ) : (
    <circle cx={cx} cy={cy} r="5" fill="var(--page)" stroke={stroke} strokeWidth={width} />
  );
}

const Cap = ({ cx = 0, cy = 0 }: ShapeProps) => (
  <path d={`M ${cx - 5} ${cy} L ${cx + 5} ${cy}`} stroke="var(--ink-2)" strokeWidth="2" />
);

/** Diamonds above so many times the highest reading are left out. */
const FARTHEST = 1.6;

/** A diamond: the largest ratio the wrench could reach. */
const Capacity = ({ cx = 0, cy = 0, payload }: ShapeProps) =>
  payload?.capacity === null ? (
    <g />
  ) : (
    <path
      d={`M ${cx} ${cy - 6} L ${cx + 6} ${cy} L ${cx} ${cy + 6} L ${cx - 6} ${cy} Z`}
      fill="none"
      stroke="var(--refusal)"
      strokeWidth="1.8"
    />
  );

/** Breakout over installed torque, opening by opening: the middle stud, with lowest and highest as bars. */
export default function RatioChart({ openings, finding, common, capacity, chosen }: RatioChartProps) {
  const { timeZone } = useRegister();
  const { plotted, clean, ratioMarks, timeMarks } = useMemo(() => {
    const points = openings.flatMap(
      ({ eventId, happenedAt, installed, median, lowest, highest, outlier }): Plotted[] =>
        median === null || lowest === null || highest === null
          ? []
          : [
              {
                at: Date.parse(happenedAt),
                median,
                lowest,
                highest,
                capacity: capacity === null || installed === null ? null : capacity / installed.torque,
                chosen: eventId === chosen,
                apart: outlier !== null,
              },
            ],
    );
    // Joints differ in it: a line is drawn where one value holds for every point.
    const cleanRatios = new Set(openings.flatMap(({ cleanRatio: known }) => (known === null ? [] : [known])));
    const [cleanRatio = null] = cleanRatios.size === 1 ? cleanRatios : [];
    const highest = Math.max(common, cleanRatio ?? 0, ...points.map((point) => point.highest));
    // A wrench far above every reading would flatten them; its torque stands in words.
    const within = (ratio: number | null) => ratio !== null && ratio <= highest * FARTHEST;
    const shown = points.map((point) => (within(point.capacity) ? point : { ...point, capacity: null }));
    const top = Math.max(highest, ...shown.map((point) => point.capacity ?? 0));
    const times = points.map(({ at }) => at);
    return {
      plotted: shown,
      clean: cleanRatio,
      ratioMarks: marksTo(top),
      timeMarks: marksBetween(Math.min(...times), Math.max(...times), 5),
    };
  }, [openings, common, capacity, chosen]);
  return (
    <>
      <p className="chart-key small">
        <svg viewBox="0 0 14 14" aria-hidden="true">
          <Key />
        </svg>{' '}
        middle stud, with lowest and highest
        <svg viewBox="0 0 14 14" aria-hidden="true">
          <Key apart />
        </svg>{' '}
        an opening that stands apart
        {capacity !== null && (
          <>
            <svg viewBox="0 0 14 14" aria-hidden="true">
              <Capacity cx={7} cy={7} />
            </svg>{' '}
            most the least of the wrenches used could reach
          </>
        )}
      </p>
      <ChartFrame
        label={`Breakout over installed torque, opening by opening. ${finding}`}
        draw={(width) => (
          <ComposedChart
            width={width}
            height={260}
            margin={{ top: 10, right: 24, bottom: 22, left: 10 }}
            accessibilityLayer={false}
          >
            <CartesianGrid stroke="var(--rule)" vertical={false} />
            <XAxis
              dataKey="at"
              type="number"
              scale="time"
              domain={['dataMin', 'dataMax']}
              padding={{ left: 24, right: 24 }}
              tickFormatter={(at: number) => dayOf(new Date(at).toISOString(), timeZone)}
              tick={axisText}
              axisLine={axisLine}
              tickLine={axisLine}
              ticks={timeMarks}
              minTickGap={24}
              allowDuplicatedCategory={false}
            />
            <YAxis
              dataKey="median"
              type="number"
              domain={[0, ratioMarks.at(-1) ?? 1]}
              ticks={ratioMarks}
              tickFormatter={(ratio: number) => sensible(ratio, 3)}
              tick={axisText}
              axisLine={axisLine}
              tickLine={axisLine}
              width={76}
              label={{ value: 'Breakout / installed', angle: -90, position: 'insideLeft', ...axisText }}
            />
            <ReferenceLine
              y={common}
              stroke="var(--refusal)"
              strokeDasharray="8 4"
              label={{
                value: `${sensible(common, 3)} common practice`,
                position: 'insideTopRight',
                ...axisText,
              }}
            />
            {clean !== null && (
              <ReferenceLine
                y={clean}
                stroke="var(--act)"
                strokeDasharray="2 4"
                label={{
                  value: `${sensible(clean, 3)} clean joint`,
                  position: 'insideBottomRight',
                  ...axisText,
                }}
              />
            )}
            <Tooltip content={() => null} cursor={false} isAnimationActive={false} />
            {capacity !== null && (
              <Scatter data={plotted} dataKey="capacity" shape={Capacity} isAnimationActive={false} />
            )}
            <Scatter data={plotted} dataKey="lowest" shape={Cap} isAnimationActive={false} />
            <Scatter data={plotted} dataKey="highest" shape={Cap} isAnimationActive={false} />
            <Scatter data={plotted} dataKey="median" shape={Middle} isAnimationActive={false} />
          </ComposedChart>
        )}
      />
    </>
  );
}
