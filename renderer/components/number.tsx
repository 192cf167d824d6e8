import type { OriginMark } from '../../core/contract/joint.ts';
import type { Dial } from '../../core/contract/setting.ts';
import type { Unit } from '../../core/units/units.ts';
import { exact, inUnit, unitLabel } from '../app/text/number.ts';

export const Unknown = () => <span className="unknown">not known</span>;

interface MeasureProps {
  readonly si: number | null;
  readonly unit: Unit;
}

/** A number with its unit, or the words "not known". */
export function Measure({ si, unit }: MeasureProps) {
  if (si === null) return <Unknown />;
  return (
    <>
      {inUnit(si, unit)} <span className="unit">{unitLabel(unit)}</span>
    </>
  );
}

/** A number under a heading that carries its unit. */
export function Plain({ si, unit }: MeasureProps) {
  return si === null ? <Unknown /> : inUnit(si, unit);
}

export function DialText({ dial }: { readonly dial: Dial | null }) {
  if (dial === null) return <Unknown />;
  return (
    <>
      {exact(dial.value)} <span className="unit">{unitLabel(dial.unit)}</span>
    </>
  );
}

export const ORIGIN_WORDS: Record<OriginMark, string> = {
  standard: 'from standard',
  certificate: 'from certificate',
  entered: 'entered',
  calculated: 'calculated',
  assumed: 'assumed',
};

export function Origin({ origin }: { readonly origin: OriginMark }) {
  return (
    <span className={origin === 'assumed' ? 'origin-mark assumed' : 'origin-mark'}>
      {ORIGIN_WORDS[origin]}
    </span>
  );
}
