import { useMemo } from 'react';
import { CartesianGrid, ComposedChart, Scatter, Tooltip, XAxis, YAxis } from 'recharts';
import type { FrictionReading } from '../../core/contract/friction.ts';
import { useRegister } from '../app/register.ts';
import { sensible } from '../app/text/number.ts';
import { dayOf } from '../app/text/time.ts';
import { axisLine, axisText, ChartFrame } from './frame.tsx';
import { marksBetween, marksTo } from './scale.ts';

interface FrictionChartProps {
  readonly readings: readonly FrictionReading[];
  readonly finding: string;
  /** Place of the reading that is read out beside the chart. */
  readonly chosen: number;
}

interface Plotted {
  readonly at: number;
  readonly nutFactor: number;
  readonly assumed: number | null;
  readonly chosen: boolean;
}

interface ShapeProps {
  readonly cx?: number | undefined;
  readonly cy?: number | undefined;
  readonly payload?: Plotted | undefined;
}

const Measured = ({ cx = 0, cy = 0, payload }: ShapeProps) => (
  <circle
    cx={cx}
    cy={cy}
    r="4.5"
    fill="var(--page)"
    stroke={payload?.chosen ? 'var(--act)' : 'var(--ink)'}
    strokeWidth={payload?.chosen ? 3.5 : 2}
  />
);

const Assumed = ({ cx = 0, cy = 0, payload }: ShapeProps) =>
  payload?.assumed === null ? (
    <g />
  ) : (
    <path d={`M ${cx - 7} ${cy} L ${cx + 7} ${cy}`} stroke="var(--ink-2)" strokeWidth="2.5" />
  );

/** Nut factor of each measured bolt over time, with the one that was assumed. */
export default function FrictionChart({ readings, finding, chosen }: FrictionChartProps) {
  const { timeZone } = useRegister();
  const { plotted, factorMarks, timeMarks } = useMemo(() => {
    const points = readings.map(
      ({ happenedAt, nutFactor, assumed }, index): Plotted => ({
        at: Date.parse(happenedAt),
        nutFactor,
        assumed,
        chosen: index === chosen,
      }),
    );
    const times = points.map(({ at }) => at);
    const highest = Math.max(...points.map(({ nutFactor, assumed }) => Math.max(nutFactor, assumed ?? 0)));
    return {
      plotted: points,
      factorMarks: marksTo(highest),
      timeMarks: marksBetween(Math.min(...times), Math.max(...times), 5),
    };
  }, [readings, chosen]);
  return (
    <>
      <p className="chart-key small">
        <svg viewBox="0 0 14 14" aria-hidden="true">
          <Measured cx={7} cy={7} />
        </svg>{' '}
        measured on one bolt
        <svg viewBox="0 0 14 14" aria-hidden="true">
          <Assumed cx={7} cy={7} />
        </svg>{' '}
        assumed by the joint’s data
      </p>
      <ChartFrame
        label={`Nut factor of each measured bolt over time. ${finding}`}
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
              dataKey="nutFactor"
              type="number"
              domain={[0, factorMarks.at(-1) ?? 1]}
              ticks={factorMarks}
              tickFormatter={(factor: number) => sensible(factor, 3)}
              tick={axisText}
              axisLine={axisLine}
              tickLine={axisLine}
              width={76}
              label={{ value: 'Nut factor K', angle: -90, position: 'insideLeft', ...axisText }}
            />
            <Tooltip content={() => null} cursor={false} isAnimationActive={false} />
            <Scatter data={plotted} dataKey="assumed" shape={Assumed} isAnimationActive={false} />
            <Scatter data={plotted} dataKey="nutFactor" shape={Measured} isAnimationActive={false} />
          </ComposedChart>
        )}
      />
    </>
  );
}
