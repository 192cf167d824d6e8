import type { Finding, Severity } from '../findings/finding.ts';
import { atJoint, raise } from '../findings/raise.ts';
import type { Known } from '../joint/resolve.ts';
import { standardThread } from '../joint/resolve.ts';
import { isDisputed, needsConfirmation, statusText } from '../reference/status.ts';
import { showQuantity } from '../text/number.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';
import { lengthUnit } from './show.ts';

/** What of the joint is not known, not confirmed, or differs from its standard. */
export function checkJoint(input: CardInput, basis: Basis): Finding[] {
  return [
    ...missingGeometry(input, basis),
    ...missingStrength(input, basis),
    ...frictionFindings(input, basis),
    ...targetFindings(input),
    ...unconfirmed(input, basis),
    ...differences(input, basis),
  ];
}

function about(input: CardInput, severity: Severity, field: string, source = 'joint data') {
  return { severity, subject: input.joint.data.tag, place: atJoint(input.joint.id, field), source };
}

function missingGeometry(input: CardInput, { joint }: Basis): Finding[] {
  const { bolting } = input.joint.data;
  const findings: Finding[] = [];
  if (joint.thread === null) {
    findings.push(
      raise(
        'thread_unknown',
        { entered: bolting.thread },
        { ...about(input, 'refusal', 'thread'), value: bolting.thread },
      ),
    );
  }
  if (joint.count === null) findings.push(raise('bolt_count_unknown', {}, about(input, 'refusal', 'count')));
  if (joint.circle === null) findings.push(raise('bolt_circle_unknown', {}, about(input, 'note', 'circle')));
  if (joint.nut === null) {
    findings.push(
      raise(
        'nut_unknown',
        { series: bolting.nutSeries },
        { ...about(input, 'warning', 'nutSeries'), value: bolting.nutSeries },
      ),
    );
  }
  return findings;
}

function missingStrength(input: CardInput, { joint }: Basis): Finding[] {
  if (joint.yieldStrength !== null) return [];
  const { grade } = input.joint.data.bolting;
  const needed = input.kind === 'tightening' && input.joint.data.target?.mode === 'percent of yield';
  return [
    raise(
      'yield_unknown',
      {
        grade,
        thread: joint.thread?.value.designation ?? null,
        needed: needed ? 'for the target' : 'for the check',
      },
      { ...about(input, needed ? 'refusal' : 'warning', 'grade'), value: grade },
    ),
  ];
}

function frictionFindings(input: CardInput, { friction, joint }: Basis): Finding[] {
  const { lubricant, target } = input.joint.data;
  const findings: Finding[] = [];
  if (friction.missing !== null) {
    const torqueGiven = input.kind === 'breakout' || target?.mode === 'torque';
    findings.push(
      raise(
        'friction_unknown',
        {
          missing: friction.missing,
          work: torqueGiven
            ? 'The bolt load behind the torque is not known.'
            : 'No torque can be given for the bolt load.',
        },
        about(input, torqueGiven ? 'warning' : 'refusal', 'lubricant'),
      ),
    );
  } else if (friction.pair === null && friction.bearingDiameter !== null && joint.thread !== null) {
    findings.push(
      raise(
        'friction_unknown',
        { missing: 'too small', work: 'Torsion of the stud is not known.' },
        {
          ...about(input, 'refusal', 'lubricant'),
          value: friction.nutFactor?.value ?? null,
          unit: 'one',
        },
      ),
    );
  }
  if (friction.assumed && lubricant !== null) {
    findings.push(
      raise(
        'friction_assumed',
        { lubricant: lubricant.name, source: lubricant.source },
        {
          ...about(input, 'warning', 'lubricant', lubricant.source || 'assumed'),
          value: friction.nutFactor?.value ?? null,
          unit: 'one',
        },
      ),
    );
  }
  return findings;
}

function targetFindings(input: CardInput): Finding[] {
  if (input.kind === 'breakout' || input.joint.data.target !== null) return [];
  return [raise('target_missing', {}, about(input, 'refusal', 'target'))];
}

function unconfirmed(input: CardInput, { joint }: Basis): Finding[] {
  const values: [string, string, Known<unknown> | null][] = [
    ['Flange table', 'count', joint.count],
    ['Flange table', 'thread', joint.thread],
    ['Flange table', 'circle', joint.circle],
    ['Yield strength', 'grade', joint.yieldStrength],
    ['Nut', 'nutSeries', joint.nut],
  ];
  // One table row fills several values: it is named once.
  const seen = new Set<string>();
  return values.flatMap(([what, field, known]) => {
    if (known === null || known.status === null || seen.has(known.source)) return [];
    const text = statusText(known.status);
    const confirm = needsConfirmation(known.status);
    if (text === null || !(confirm || isDisputed(known.status))) return [];
    seen.add(known.source);
    return [
      raise(
        'table_value_unconfirmed',
        { what, source: known.source, status: text, note: known.note },
        { ...about(input, confirm ? 'warning' : 'note', field, known.source), value: text },
      ),
    ];
  });
}

function differences(input: CardInput, { joint }: Basis): Finding[] {
  const { flangeRow } = joint;
  const { bolting } = input.joint.data;
  if (flangeRow === null) return [];
  const findings: Finding[] = [];
  const source = flangeRow.standard;
  if (bolting.count !== null && flangeRow.bolts !== null && bolting.count !== flangeRow.bolts) {
    findings.push(
      raise(
        'count_differs',
        { entered: String(bolting.count), standard: String(flangeRow.bolts) },
        {
          ...about(input, 'warning', 'count', source),
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
        { entered: entered.designation, standard: standard.designation },
        {
          ...about(input, 'warning', 'thread', source),
          value: entered.designation,
          limit: standard.designation,
        },
      ),
    );
  }
  const circle = bolting.circle?.si ?? null;
  // The metric tables round the inch circle to 0.1 mm, some to 0.5 mm.
  if (circle !== null && flangeRow.boltCircle !== null && Math.abs(circle - flangeRow.boltCircle) > 0.0005) {
    const unit = lengthUnit(bolting.circle?.unit);
    findings.push(
      raise(
        'circle_differs',
        { entered: showQuantity(circle, unit, 5), standard: showQuantity(flangeRow.boltCircle, unit, 5) },
        { ...about(input, 'warning', 'circle', source), value: circle, limit: flangeRow.boltCircle, unit },
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
