import { useState } from 'react';
import type { CertificateLineView } from '../../../core/contract/tool.ts';
import type { Unit } from '../../../core/units/units.ts';
import { inUnit, unitLabel } from '../../app/text/number.ts';
import { PointReader } from '../../components/point-reader.tsx';

interface LinePointsProps {
  readonly line: CertificateLineView;
  readonly pressureUnit: Unit;
  readonly torqueUnit: Unit;
}

/** Each point of a certificate's chart in words, by the arrow keys. */
export function LinePoints({ line, pressureUnit, torqueUnit }: LinePointsProps) {
  const [place, setPlace] = useState(0);
  const point = line.points[place];
  if (point === undefined) return null;
  const torque = unitLabel(torqueUnit);
  const words = `${inUnit(point.pressure, pressureUnit)} ${unitLabel(pressureUnit)}, ${inUnit(point.torque, torqueUnit)} ${torque}, ${inUnit(point.residual, torqueUnit)} ${torque} away from the line${point.direction ? `, ${point.direction}` : ''}`;
  return (
    <>
      <PointReader
        label="Point read out below"
        count={line.points.length}
        place={place}
        words={words}
        onPlace={setPlace}
      />
      <p className="small no-print" aria-live="polite">
        Point {place + 1} of {line.points.length}: {words}
      </p>
    </>
  );
}
