import { correctionOfCertificate, lineOfCertificate } from '../../../core/calibration/certificate.ts';
import type { CheckData } from '../../../core/contract/check.ts';
import type { CertificateData } from '../../../core/contract/tool.ts';
import type { Compared } from '../../../core/recall/check-error.ts';
import type { ErrorSource } from '../../../core/recall/delivered.ts';
import { UNITS } from '../../../core/units/units.ts';
import { basisText, type FailingBasis, measuredAsFound } from './basis.ts';
import type { Subject } from './subject.ts';

/** Parts that one wrench of a record was put together from. */
export interface Wrench {
  readonly driveId: string | null;
  readonly cassetteId: string | null;
  readonly reducerIds: readonly string[];
  /** Pump and gauge that drove it. */
  readonly drivenBy: readonly string[];
}

/** What the failing evidence says of one use. */
export interface SourceOfUse {
  readonly source: ErrorSource;
  /** Why the error was not shown for this use itself; empty where it was. */
  readonly assumption: string;
  readonly limitsKnown: boolean;
}

const shown = (source: ErrorSource): SourceOfUse => ({ source, assumption: '', limitsKnown: true });
const notKnown = (why: string): SourceOfUse => shown({ kind: 'not known', name: `not known: ${why}` });

/** The error the evidence gives for a use with this wrench; a tensioned joint has no torque the evidence could speak of. */
export function sourceOf(
  basis: FailingBasis,
  subject: Subject,
  wrench: Wrench,
  tensioned: boolean,
): SourceOfUse {
  if (basis.kind === 'statement') return stated(basis, subject);
  if (tensioned) return notKnown('tensioned; the evidence is about torque');
  return basis.kind === 'check' ? checked(basis, subject) : certified(basis, wrench);
}

function stated(basis: Extract<FailingBasis, { kind: 'statement' }>, subject: Subject): SourceOfUse {
  const name = basisText(basis);
  if (basis.nutFactor !== null) return shown({ kind: 'nut factor', name, value: basis.nutFactor.si });
  if (basis.error !== null) return shown({ kind: 'stated', name, error: basis.error });
  if (subject.kind === 'tool') return notKnown('no error is stated');
  if (subject.batch === 'lubricant') return notKnown('no nut factor or error of the batch is stated');
  // Another strength of stud or gasket changes what the joint stands, not what it was tightened to.
  return { source: { kind: 'stated', name, error: 0 }, assumption: '', limitsKnown: false };
}

function checked(basis: Extract<FailingBasis, { kind: 'check' }>, subject: Subject): SourceOfUse {
  const name = basisText(basis);
  const { comparisons } = basis.data;
  const [first] = comparisons;
  if (first === undefined) return notKnown(`a failed ${basis.data.kind} says nothing about torque`);
  const of = UNITS[first.reference.unit].quantity === 'torque' ? 'torque' : 'pressure';
  const along = of === 'pressure' || comparisons.some(({ pressure }) => pressure !== null);
  const points = comparisons.flatMap((one) => comparedAt(one, along));
  if (of === 'pressure' && subject.kind === 'tool' && subject.tool.data.properties.class !== 'gauge') {
    return notKnown(`${name} compares pressures, which is about the gauge`);
  }
  return shown({
    kind: 'comparisons',
    name,
    of,
    along: along ? 'pressure' : 'torque',
    comparisons: points,
  });
}

function comparedAt(
  { pressure, reference, intended }: CheckData['comparisons'][number],
  alongPressure: boolean,
): Compared[] {
  const at = alongPressure ? (pressure?.si ?? null) : intended.si;
  // A gauge's comparison may give the place by its own reading alone.
  const place = at ?? (UNITS[intended.unit].quantity === 'pressure' ? intended.si : null);
  return place === null ? [] : [{ at: place, intended: intended.si, reference: reference.si }];
}

function certified(basis: Extract<FailingBasis, { kind: 'certificate' }>, wrench: Wrench): SourceOfUse {
  const { data, toolNumber } = basis;
  const measured = measuredAsFound(data);
  const name = basisText(basis);
  if (measured.kind === 'hand torque') {
    const comparisons = measured.points.map(({ set, reference }) => ({
      at: set.si,
      intended: set.si,
      reference: reference.si,
    }));
    return shown({ kind: 'comparisons', name, of: 'torque', along: 'torque', comparisons });
  }
  if (measured.kind === 'gauge') {
    const correction = correctionOfCertificate({ measured });
    return correction === null
      ? notKnown(`${name} has too few points`)
      : shown({ kind: 'gauge', name, correction });
  }
  if (wrench.driveId !== data.toolId) {
    return notKnown(`used with another drive unit than ${toolNumber}, which ${name} is about`);
  }
  const line = lineOfCertificate({ measured });
  if (line === null) return notKnown(`${name} gives no line`);
  const { expandedUncertainty, coverageFactor } = measured;
  const reference =
    expandedUncertainty === null ? null : { expanded: expandedUncertainty.si, coverage: coverageFactor };
  return {
    ...shown({ kind: 'line', name, line, reference }),
    assumption: sameCombination(data, wrench)
      ? ''
      : 'used in another combination than the certificate names: its error is taken over',
  };
}

/** A certificate that names pump and gauge speaks for these; one that names no parts speaks for the drive unit. */
function sameCombination(
  { withToolIds }: CertificateData,
  { cassetteId, reducerIds, drivenBy }: Wrench,
): boolean {
  if (withToolIds.length === 0) return true;
  const named = withToolIds.filter((id) => !drivenBy.includes(id));
  const parts = [...(cassetteId === null ? [] : [cassetteId]), ...reducerIds];
  return parts.length === named.length && named.every((id) => parts.includes(id));
}
