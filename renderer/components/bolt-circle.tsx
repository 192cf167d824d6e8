import { type Circle, hexagon, layOut, type Spot } from './bolt-geometry.ts';

interface BoltCircleProps {
  readonly count: number;
  /** Bolts in the order they are turned, one per tool, null where a tool waits; without it they are only numbered. */
  readonly order?: readonly (readonly (number | null)[])[];
  /** Place in `order` of what is being turned. */
  readonly at?: number;
  /** Bolts that are left as they are; drawn crossed out. */
  readonly leftOut?: readonly number[];
  readonly size?: number;
}

/** The joint seen from the nut side: bolts numbered clockwise from the marked bolt 1. */
export function BoltCircle({ count, order = [], at, leftOut = [], size = 312 }: BoltCircleProps) {
  const circle = layOut(count, size);
  const current = at === undefined ? [] : (order[at] ?? []).filter((bolt) => bolt !== null);
  const done = new Set(at === undefined ? [] : order.slice(0, at).flat());
  const stateOf = (bolt: number): NutState => {
    if (leftOut.includes(bolt)) return 'left out';
    if (current.includes(bolt)) return 'now';
    return done.has(bolt) ? 'done' : 'waiting';
  };
  const label = `Bolt circle, ${count} bolts, numbered clockwise from the mark, seen from the nut side${
    current.length === 0
      ? ''
      : `; now bolt ${current.join(' and ')}, number ${(at ?? 0) + 1} of ${order.length} in the order`
  }${leftOut.length === 0 ? '' : `; left out ${leftOut.join(', ')}`}`;
  return (
    <svg viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label}>
      <Rings circle={circle} />
      <OrderLines circle={circle} order={order} at={at ?? 0} />
      {circle.spots.map((spot) => (
        <Nut key={spot.bolt} spot={spot} circle={circle} state={stateOf(spot.bolt)} />
      ))}
      <FirstBoltMark circle={circle} />
    </svg>
  );
}

function Rings({ circle: { centre, radius, nut } }: { readonly circle: Circle }) {
  return (
    <g fill="none">
      <circle cx={centre} cy={centre} r={rim(radius, nut)} stroke="var(--rule-strong)" strokeWidth="1.2" />
      <circle
        cx={centre}
        cy={centre}
        r={radius}
        stroke="var(--rule-strong)"
        strokeWidth="1"
        strokeDasharray="9 3 2 3"
      />
      <circle
        cx={centre}
        cy={centre}
        r={Math.max(8, radius - nut * 1.9)}
        stroke="var(--rule)"
        strokeWidth="1.2"
      />
    </g>
  );
}

const rim = (radius: number, nut: number): number => radius + Math.max(nut, 7) * 1.75;

const MOST_LINES_AHEAD = 16;

interface OrderLinesProps {
  readonly circle: Circle;
  readonly order: readonly (readonly (number | null)[])[];
  readonly at: number;
}

function OrderLines({ circle, order, at }: OrderLinesProps) {
  const spot = (bolt: number | null | undefined) => (bolt ? circle.spots[bolt - 1] : undefined);
  const lines = order.slice(1).flatMap((bolts, index) =>
    bolts.map((bolt, tool) => ({
      from: spot(order[index]?.[tool]),
      to: spot(bolt),
      walked: index < at,
      next: index === at,
    })),
  );
  // With many bolts the lines ahead would hide the drawing: only the next one is drawn.
  const shown = order.length > MOST_LINES_AHEAD ? lines.filter((line) => line.walked || line.next) : lines;
  return (
    <g>
      {shown.map(
        ({ from, to, walked }) => from && to && <Step key={to.bolt} {...{ from, to, walked, circle }} />,
      )}
    </g>
  );
}

interface StepProps {
  readonly from: Spot;
  readonly to: Spot;
  readonly walked: boolean;
  readonly circle: Circle;
}

function Step({ from, to, walked, circle }: StepProps) {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const gap = circle.nut * 1.2;
  if (length <= 2 * gap) return null;
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  return (
    <line
      className="order-line"
      x1={from.x + ux * gap}
      y1={from.y + uy * gap}
      x2={to.x - ux * gap}
      y2={to.y - uy * gap}
      stroke={walked ? 'var(--act)' : 'var(--rule-strong)'}
      strokeWidth={walked ? 1.8 : 0.9}
      strokeDasharray={walked ? undefined : '2 4'}
    />
  );
}

type NutState = 'now' | 'done' | 'left out' | 'waiting';

interface NutProps {
  readonly spot: Spot;
  readonly circle: Circle;
  readonly state: NutState;
}

function Nut({ spot, circle, state }: NutProps) {
  const { x, y, angle } = spot;
  const { nut } = circle;
  // Below this size a number can't be read; every fifth stands outside the rim instead.
  const readable = nut >= 6.5;
  const outside = !readable && (spot.bolt === 1 || spot.bolt % 5 === 0 || state === 'now');
  const away = nut + 7;
  return (
    <g className="nut">
      {state === 'now' && (
        <polygon
          className="here"
          points={hexagon(x, y, nut * 1.42, angle)}
          fill="var(--act-wash)"
          stroke="var(--act)"
          strokeWidth="2.4"
        />
      )}
      <polygon
        points={hexagon(x, y, nut, angle)}
        fill={state === 'done' ? 'var(--act)' : 'var(--page)'}
        stroke={state === 'left out' ? 'var(--refusal)' : state === 'waiting' ? 'var(--ink-2)' : 'var(--act)'}
        strokeWidth={state === 'now' ? 2 : 1.3}
      />
      {state === 'left out' && (
        <path
          d={`M ${x - nut} ${y - nut} L ${x + nut} ${y + nut} M ${x + nut} ${y - nut} L ${x - nut} ${y + nut}`}
          stroke="var(--refusal)"
          strokeWidth="1.6"
        />
      )}
      {(readable || outside) && (
        <text
          x={x - (outside ? away * Math.cos(angle) : 0)}
          y={y - (outside ? away * Math.sin(angle) : 0)}
          dominantBaseline="central"
          textAnchor="middle"
          fontSize={readable ? nut * 1.02 : 9}
          fontWeight="600"
          fill={state === 'done' && readable ? 'var(--page)' : 'var(--ink)'}
        >
          {spot.bolt}
        </text>
      )}
    </g>
  );
}

function FirstBoltMark({ circle: { centre, radius, nut, spots } }: { readonly circle: Circle }) {
  const first = spots[0];
  if (first === undefined) return null;
  const edge = rim(radius, nut);
  const point = (r: number, turn: number) =>
    `${centre + r * Math.cos(first.angle + turn)} ${centre + r * Math.sin(first.angle + turn)}`;
  const half = 7 / edge;
  return (
    <path
      d={`M ${point(edge - 1.5, 0)} L ${point(edge + 11.5, -half)} L ${point(edge + 11.5, half)} Z`}
      fill="var(--ink)"
    />
  );
}
