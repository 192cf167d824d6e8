import type { Raised, Severity } from '../findings/finding.ts';
import { atJoint, raise } from '../findings/raise.ts';
import { standardThread } from '../joint/resolve.ts';
import { showQuantity } from '../text/number.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';
import { lengthUnit } from './show.ts';

/**
 * Holds entered bolting against the flange standard. A stated reason makes a difference a note.
 *
 * @param input the card's inputs
 * @param basis joint, friction and target of the card
 * @returns one finding for each of count, thread and circle that differs; none for a joint without a standard
 * @example checkStandard(input, basisOf(input)).length // 0
 * @source the flange tables of `core/reference`
 */
export function checkStandard(input: CardInput, { joint }: Basis): Raised[] {
  const { flangeRow } = joint;
  const { bolting } = input.joint.data;
  if (flangeRow === null) return [];
  const findings: Raised[] = [];
  const source = flangeRow.standard;
  const { reason } = bolting;
  const severity = reason === '' ? 'warning' : 'note';
  const about = (field: string) => ({
    severity: severity as Severity,
    subject: input.joint.data.tag,
    place: atJoint(input.joint.id, field),
    source,
  });
  if (bolting.count !== null && flangeRow.bolts !== null && bolting.count !== flangeRow.bolts) {
    findings.push(
      raise(
        'count_differs',
        () => ({ entered: String(bolting.count), standard: String(flangeRow.bolts), reason }),
        {
          ...about('count'),
          value: bolting.count,
          limit: flangeRow.bolts,
          unit: 'one',
        },
      ),
    );
  }
  const standard = standardThread(flangeRow);
  const entered = bolting.thread === null ? null : (joint.thread?.value ?? null);
  if (standard !== null && entered !== null && !sameThread(entered, standard)) {
    findings.push(
      raise(
        'thread_differs',
        () => ({ entered: entered.designation, standard: standard.designation, reason }),
        {
          ...about('thread'),
          value: entered.designation,
          limit: standard.designation,
        },
      ),
    );
  }
  const circle = bolting.circle?.si ?? null;
  // The metric tables round the inch circle to 0.1 mm, some to 0.5 mm.
  const { boltCircle } = flangeRow;
  if (circle !== null && boltCircle !== null && Math.abs(circle - boltCircle) > 0.0005) {
    const unit = lengthUnit(bolting.circle?.unit);
    findings.push(
      raise(
        'circle_differs',
        () => ({
          entered: showQuantity(circle, unit, 5),
          standard: showQuantity(boltCircle, unit, 5),
          reason,
        }),
        { ...about('circle'), value: circle, limit: boltCircle, unit },
      ),
    );
  }
  return findings;
}

function sameThread(
  a: { readonly diameter: number; readonly pitch: number },
  b: { readonly diameter: number; readonly pitch: number },
): boolean {
  return Math.abs(a.diameter - b.diameter) < 1e-9 && Math.abs(a.pitch - b.pitch) < 1e-9;
}
