import { type ReactElement, useLayoutEffect, useRef, useState } from 'react';

interface ChartFrameProps {
  readonly label: string;
  /** Draws at the width the page gives it. */
  readonly draw: (width: number) => ReactElement;
}

const FIRST_WIDTH = 680;

/** Gives a chart a fixed width, measured once and on resizing, and a name for those who can't see it. */
export function ChartFrame({ label, draw }: ChartFrameProps) {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(FIRST_WIDTH);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const measure = () => setWidth(Math.max(280, Math.floor(element.clientWidth)));
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return (
    <div className="chart" ref={box} role="img" aria-label={label}>
      <div aria-hidden="true">{draw(width)}</div>
    </div>
  );
}

export const axisText = { fill: 'var(--ink-2)', fontSize: 13 };
export const axisLine = { stroke: 'var(--rule-strong)' };
