import { CartesianGrid, ComposedChart, Scatter, Tooltip, XAxis, YAxis } from 'recharts';
import { sensible } from '../app/text/number.ts';
import { axisLine, axisText, ChartFrame } from './frame.tsx';
import { marksTo } from './scale.ts';

/** One plan's evenness at each stiffness tried; parts of one, null where nothing carries. */
export interface Tried {
  readonly name: string;
  readonly points: readonly { readonly factor: number; readonly variation: number | null }[];
}

interface SensitivityChartProps {
  readonly tried: readonly Tried[];
  readonly finding: string;
  /** Place of the stiffness that is read out beside the chart. */
  readonly chosen: number;
}

interface Plotted {
  readonly factor: number;
  readonly percent: number;
  readonly chosen: boolean;
}

interface ShapeProps {
  readonly cx?: number | undefined;
  readonly cy?: number | undefined;
  readonly payload?: Plotted | undefined;
}

const edge = (payload: Plotted | undefined) => ({
  stroke: payload?.chosen ? 'var(--ink)' : 'var(--act)',
  strokeWidth: payload?.chosen ? 3 : 2,
});
const Square = ({ cx = 0, cy = 0, payload }: ShapeProps) => (
  <rect x={cx - 5} y={cy - 5} width="10" height="10" fill="var(--act)" {...edge(payload)} />
);
const Ring = ({ cx = 0, cy = 0, payload }: ShapeProps) => (
  <circle cx={cx} cy={cy} r="6" fill="var(--page)" {...edge(payload)} />
);
const SHAPES = [Square, Ring];
const LINES = ['none', '5 4'];

/** How uneven each plan ends over the stiffness of the gasket; square and full line for the first, ring and dashes for the second. */
export default function SensitivityChart({ tried, finding, chosen }: SensitivityChartProps) {
  const plotted = tried.map(({ points }) =>
    points.flatMap(({ factor, variation }, index): Plotted[] =>
      variation === null ? [] : [{ factor, percent: variation * 100, chosen: index === chosen }],
    ),
  );
  const factors = tried[0]?.points.map(({ factor }) => factor) ?? [];
  const marks = marksTo(Math.max(0, ...plotted.flat().map(({ percent }) => percent)));
  return (
    <>
      <p className="chart-key small">
        {tried.map(({ name }, index) => {
          const Shape = SHAPES[index] ?? Square;
          return (
            <span key={name}>
              <svg viewBox="0 0 14 14" aria-hidden="true">
                <Shape cx={7} cy={7} />
              </svg>{' '}
              {name}
            </span>
          );
        })}
      </p>
      <ChartFrame
        label={`Standard deviation of the load between bolts over the stiffness of the gasket. ${finding}`}
        draw={(width) => (
          <ComposedChart
            width={width}
            height={240}
            margin={{ top: 10, right: 24, bottom: 30, left: 10 }}
            accessibilityLayer={false}
          >
            <CartesianGrid stroke="var(--rule)" vertical={false} />
            <XAxis
              dataKey="factor"
              type="number"
              scale="log"
              domain={['dataMin', 'dataMax']}
              padding={{ left: 24, right: 24 }}
              ticks={factors}
              tickFormatter={(factor: number) => sensible(factor, 3)}
              tick={axisText}
              axisLine={axisLine}
              tickLine={axisLine}
              allowDuplicatedCategory={false}
              label={{ value: 'Times as stiff', position: 'bottom', ...axisText }}
            />
            <YAxis
              dataKey="percent"
              type="number"
              domain={[0, marks.at(-1) ?? 1]}
              ticks={marks}
              tickFormatter={(percent: number) => sensible(percent, 3)}
              tick={axisText}
              axisLine={axisLine}
              tickLine={axisLine}
              width={76}
              label={{ value: 'Std. deviation, %', angle: -90, position: 'insideLeft', ...axisText }}
            />
            <Tooltip content={() => null} cursor={false} isAnimationActive={false} />
            {plotted.map((data, index) => (
              <Scatter
                key={tried[index]?.name}
                data={data}
                dataKey="percent"
                shape={SHAPES[index] ?? Square}
                line={{ stroke: 'var(--act)', strokeWidth: 2, strokeDasharray: LINES[index] ?? 'none' }}
                isAnimationActive={false}
              />
            ))}
          </ComposedChart>
        )}
      />
    </>
  );
}
