import { useMemo } from 'react';
import { CartesianGrid, ComposedChart, ReferenceLine, Scatter, XAxis, YAxis } from 'recharts';
import type { CertificateLineView } from '../../core/contract/tool.ts';
import { fromSI, type Unit } from '../../core/units/units.ts';
import { sensible, unitLabel } from '../app/text/number.ts';
import { axisLine, axisText, ChartFrame } from './frame.tsx';
import { marksTo } from './scale.ts';

interface CertificateChartProps {
  readonly line: CertificateLineView;
  /** What it did on arrival; null where nothing was adjusted. */
  readonly asFound: CertificateLineView | null;
  readonly name: string;
  readonly pressureUnit: Unit;
  readonly torqueUnit: Unit;
}

interface Plotted {
  readonly pressure: number;
  readonly torque: number;
  readonly residual: number;
}

interface ShapeProps {
  readonly cx?: number | undefined;
  readonly cy?: number | undefined;
}

const Up = ({ cx = 0, cy = 0 }: ShapeProps) => (
  <path d={`M ${cx - 5} ${cy + 4} L ${cx} ${cy - 5} L ${cx + 5} ${cy + 4} Z`} fill="var(--act)" />
);
const Down = ({ cx = 0, cy = 0 }: ShapeProps) => (
  <path
    d={`M ${cx - 5} ${cy - 4} L ${cx} ${cy + 5} L ${cx + 5} ${cy - 4} Z`}
    fill="var(--page)"
    stroke="var(--ink)"
    strokeWidth="1.5"
  />
);

const Found = ({ cx = 0, cy = 0 }: ShapeProps) => (
  <rect
    x={cx - 4}
    y={cy - 4}
    width="8"
    height="8"
    fill="var(--page)"
    stroke="var(--refusal)"
    strokeWidth="1.5"
  />
);

/** The laboratory's points with the line through them, and below how far each lies from it. */
export default function CertificateChart(props: CertificateChartProps) {
  const { line, asFound, name, pressureUnit, torqueUnit } = props;
  const { up, down, found, ends, foundEnds, pressureMarks, torqueMarks } = useMemo(() => {
    const plot = (point: CertificateLineView['points'][number]): Plotted => ({
      pressure: fromSI(point.pressure, pressureUnit),
      torque: fromSI(point.torque, torqueUnit),
      residual: fromSI(point.residual, torqueUnit),
    });
    const all = [...line.points, ...(asFound?.points ?? [])];
    const endsOf = (drawn: CertificateLineView) => {
      const pressures = drawn.points.map((point) => point.pressure);
      const at = (pressure: number) => ({
        x: fromSI(pressure, pressureUnit),
        y: fromSI(drawn.intercept + drawn.slope * pressure, torqueUnit),
      });
      return [at(Math.min(...pressures)), at(Math.max(...pressures))] as const;
    };
    return {
      up: line.points.filter((point) => point.direction === 'up').map(plot),
      down: line.points.filter((point) => point.direction === 'down').map(plot),
      found: asFound?.points.map(plot) ?? [],
      ends: endsOf(line),
      foundEnds: asFound && endsOf(asFound),
      pressureMarks: marksTo(fromSI(Math.max(...all.map((point) => point.pressure)), pressureUnit)),
      torqueMarks: marksTo(fromSI(Math.max(...all.map((point) => point.torque)), torqueUnit)),
    };
  }, [line, asFound, pressureUnit, torqueUnit]);
  const pressure = unitLabel(pressureUnit);
  const torque = unitLabel(torqueUnit);
  const across = {
    dataKey: 'pressure',
    type: 'number' as const,
    domain: [0, pressureMarks.at(-1) ?? 1] as [number, number],
    ticks: pressureMarks,
    tick: axisText,
    axisLine,
    tickLine: axisLine,
    tickFormatter: (value: number) => sensible(value, 3),
  };
  const margin = { top: 10, right: 24, bottom: 24, left: 10 };
  const upright = (value: string) => ({ value, angle: -90, position: 'insideLeft' as const, ...axisText });
  return (
    <>
      <p className="chart-key small">
        <svg viewBox="0 0 14 14" aria-hidden="true">
          <Up cx={7} cy={7} />
        </svg>{' '}
        pressure rising
        {down.length > 0 && (
          <>
            <svg viewBox="0 0 14 14" aria-hidden="true">
              <Down cx={7} cy={7} />
            </svg>{' '}
            pressure falling
          </>
        )}
        {foundEnds && (
          <>
            <svg viewBox="0 0 14 14" aria-hidden="true">
              <Found cx={7} cy={7} />
            </svg>{' '}
            as found, with the broken line
          </>
        )}
      </p>
      <ChartFrame
        label={`Certificate ${name}: torque in ${torque} over pressure in ${pressure}, with the line through the points${asFound ? ', as found and as left' : ''}`}
        draw={(width) => (
          <ComposedChart width={width} height={240} margin={margin} accessibilityLayer={false}>
            <CartesianGrid stroke="var(--rule)" vertical={false} />
            <XAxis {...across} />
            <YAxis
              dataKey="torque"
              type="number"
              domain={[0, torqueMarks.at(-1) ?? 1]}
              ticks={torqueMarks}
              width={84}
              tick={axisText}
              axisLine={axisLine}
              tickLine={axisLine}
              tickFormatter={(value: number) => sensible(value, 3)}
              label={upright(`Torque, ${torque}`)}
            />
            <ReferenceLine segment={ends} stroke="var(--ink-2)" />
            {foundEnds && <ReferenceLine segment={foundEnds} stroke="var(--refusal)" strokeDasharray="6 4" />}
            {found.length > 0 && (
              <Scatter data={found} dataKey="torque" shape={Found} isAnimationActive={false} />
            )}
            <Scatter data={up} dataKey="torque" shape={Up} isAnimationActive={false} />
            <Scatter data={down} dataKey="torque" shape={Down} isAnimationActive={false} />
          </ComposedChart>
        )}
      />
      <ChartFrame
        label={`Certificate ${name}: distance of each point from the line in ${torque}`}
        draw={(width) => (
          <ComposedChart width={width} height={170} margin={margin} accessibilityLayer={false}>
            <XAxis
              {...across}
              label={{ value: `Pressure, ${pressure}`, position: 'insideBottom', offset: -14, ...axisText }}
            />
            <YAxis
              dataKey="residual"
              type="number"
              width={84}
              tick={axisText}
              axisLine={axisLine}
              tickLine={axisLine}
              tickCount={3}
              tickFormatter={(value: number) => sensible(value, 2)}
              label={upright(`Off, ${torque}`)}
            />
            <ReferenceLine y={0} stroke="var(--ink-2)" />
            <Scatter data={up} dataKey="residual" shape={Up} isAnimationActive={false} />
            <Scatter data={down} dataKey="residual" shape={Down} isAnimationActive={false} />
          </ComposedChart>
        )}
      />
    </>
  );
}
