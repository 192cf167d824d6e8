import { useMemo } from 'react';
import { CartesianGrid, ComposedChart, Scatter, Tooltip, XAxis, YAxis } from 'recharts';
import type { ChartPoint } from '../../core/contract/joint.ts';
import { useRegister } from '../app/register.ts';
import { sensible } from '../app/text/number.ts';
import { dayOf } from '../app/text/time.ts';
import { axisLine, axisText, ChartFrame } from './frame.tsx';
import { marksBetween, marksTo } from './scale.ts';

interface Plotted extends ChartPoint {
  readonly at: number;
}

interface TorqueChartProps {
  readonly points: readonly ChartPoint[];
  readonly finding: string;
}

interface ShapeProps {
  readonly cx?: number | undefined;
  readonly cy?: number | undefined;
}

const Square = ({ cx = 0, cy = 0 }: ShapeProps) => (
  <rect x={cx - 5} y={cy - 5} width="10" height="10" fill="var(--act)" />
);
const Ring = ({ cx = 0, cy = 0 }: ShapeProps) => (
  <circle cx={cx} cy={cy} r="5" fill="var(--page)" stroke="var(--ink)" strokeWidth="2" />
);
const Peak = ({ cx = 0, cy = 0 }: ShapeProps) => (
  <path d={`M ${cx - 6} ${cy + 4} L ${cx} ${cy - 6} L ${cx + 6} ${cy + 4} Z`} fill="var(--refusal)" />
);

const Struck = ({ cx = 0, cy = 0 }: ShapeProps) => (
  <path
    d={`M ${cx - 8} ${cy - 8} l 16 16 m 0 -16 l -16 16`}
    stroke="var(--refusal)"
    strokeWidth="2"
    fill="none"
  />
);

/** Torque over time; squares were installed, rings are median breakouts, peaks the worst stud of a breakout, crosses what a refusal stands against. */
export default function TorqueChart({ points, finding }: TorqueChartProps) {
  const { timeZone } = useRegister();
  const { tightenings, breakouts, refused, torqueMarks, timeMarks } = useMemo(() => {
    const plotted: Plotted[] = points.map((point) => ({ ...point, at: Date.parse(point.happenedAt) }));
    return {
      tightenings: plotted.filter((point) => point.kind === 'tightening'),
      breakouts: plotted.filter((point) => point.kind === 'breakout'),
      refused: plotted.filter((point) => point.refused),
      torqueMarks: marksTo(Math.max(...plotted.map((point) => point.highest))),
      timeMarks: marksBetween(
        Math.min(...plotted.map((point) => point.at)),
        Math.max(...plotted.map((point) => point.at)),
        5,
      ),
    };
  }, [points]);
  return (
    <>
      <p className="chart-key small">
        <svg viewBox="0 0 14 14" aria-hidden="true">
          <Square cx={7} cy={7} />
        </svg>{' '}
        installed
        <svg viewBox="0 0 14 14" aria-hidden="true">
          <Ring cx={7} cy={7} />
        </svg>{' '}
        breakout, median stud
        <svg viewBox="0 0 14 14" aria-hidden="true">
          <Peak cx={7} cy={7} />
        </svg>{' '}
        breakout, worst stud
        {refused.length > 0 && (
          <>
            <svg viewBox="-2 -2 18 18" aria-hidden="true">
              <Struck cx={7} cy={7} />
            </svg>{' '}
            recorded against a refusal
          </>
        )}
      </p>
      <ChartFrame
        label={`Installed and breakout torque over time. ${finding}`}
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
              dataKey="torque"
              type="number"
              domain={[0, torqueMarks.at(-1) ?? 1]}
              ticks={torqueMarks}
              tickFormatter={(torque: number) => sensible(torque, 3)}
              tick={axisText}
              axisLine={axisLine}
              tickLine={axisLine}
              width={76}
              label={{ value: 'Torque, N·m', angle: -90, position: 'insideLeft', ...axisText }}
            />
            <Tooltip content={() => null} cursor={false} isAnimationActive={false} />
            <Scatter data={tightenings} dataKey="torque" shape={Square} isAnimationActive={false} />
            <Scatter data={breakouts} dataKey="highest" shape={Peak} isAnimationActive={false} />
            <Scatter data={breakouts} dataKey="torque" shape={Ring} isAnimationActive={false} />
            <Scatter data={refused} dataKey="torque" shape={Struck} isAnimationActive={false} />
          </ComposedChart>
        )}
      />
    </>
  );
}
