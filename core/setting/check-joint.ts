import type { Raised, Severity } from '../findings/finding.ts';
import { atJoint, raise } from '../findings/raise.ts';
import type { Basis } from './basis.ts';
import { checkStandard } from './check-standard.ts';
import { checkTableValues } from './check-table-values.ts';
import type { CardInput } from './input.ts';

/**
 * Says what of the joint is not known, not confirmed, or differs from its standard.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @returns findings; none when nothing stands against it
 * @example checkJoint(complete, basisOf(complete)).length // 0
 * @source rule of this program
 */
export function checkJoint(input: CardInput, basis: Basis): Raised[] {
  return [
    ...missingGeometry(input, basis),
    ...missingStrength(input, basis),
    ...frictionFindings(input, basis),
    ...targetFindings(input),
    ...checkTableValues(input, basis),
    ...checkStandard(input, basis),
  ];
}

function about(input: CardInput, severity: Severity, field: string, source = 'joint data') {
  return { severity, subject: input.joint.data.tag, place: atJoint(input.joint.id, field), source };
}

function missingGeometry(input: CardInput, { joint }: Basis): Raised[] {
  const { bolting } = input.joint.data;
  const findings: Raised[] = [];
  if (joint.thread === null) {
    findings.push(
      raise('thread_unknown', () => ({ entered: bolting.thread }), {
        ...about(input, 'refusal', 'thread'),
        value: bolting.thread,
      }),
    );
  }
  if (joint.count === null)
    findings.push(raise('bolt_count_unknown', () => ({}), about(input, 'refusal', 'count')));
  if (joint.circle === null)
    findings.push(raise('bolt_circle_unknown', () => ({}), about(input, 'note', 'circle')));
  if (joint.nut === null) {
    findings.push(
      raise('nut_unknown', () => ({ series: bolting.nutSeries }), {
        ...about(input, 'warning', 'nutSeries'),
        value: bolting.nutSeries,
      }),
    );
  }
  return findings;
}

function missingStrength(input: CardInput, { joint }: Basis): Raised[] {
  if (joint.yieldStrength !== null) return [];
  const { grade } = input.joint.data.bolting;
  const needed = input.kind === 'tightening' && input.joint.data.target?.mode === 'percent of yield';
  return [
    raise(
      'yield_unknown',
      () => ({
        grade,
        thread: joint.thread?.value.designation ?? null,
        needed: needed ? 'for the target' : 'for the check',
      }),
      { ...about(input, needed ? 'refusal' : 'warning', 'grade'), value: grade },
    ),
  ];
}

function frictionFindings(input: CardInput, { friction, joint }: Basis): Raised[] {
  const { lubricant, target } = input.joint.data;
  const findings: Raised[] = [];
  const { missing } = friction;
  if (missing !== null) {
    const torqueGiven = input.kind === 'breakout' || target?.mode === 'torque';
    findings.push(
      raise(
        'friction_unknown',
        () => ({
          missing,
          work: torqueGiven
            ? 'The bolt load behind the torque is not known.'
            : 'No torque can be given for the bolt load.',
        }),
        about(input, torqueGiven ? 'warning' : 'refusal', 'lubricant'),
      ),
    );
  } else if (friction.pair === null && friction.bearingDiameter !== null && joint.thread !== null) {
    findings.push(
      raise('friction_unknown', () => ({ missing: 'too small', work: 'Torsion of the stud is not known.' }), {
        ...about(input, 'refusal', 'lubricant'),
        value: friction.nutFactor?.value ?? null,
        unit: 'one',
      }),
    );
  }
  if (friction.assumed && lubricant !== null) {
    findings.push(
      raise('friction_assumed', () => ({ lubricant: lubricant.name, source: lubricant.source }), {
        ...about(input, 'warning', 'lubricant', lubricant.source || 'assumed'),
        value: friction.nutFactor?.value ?? null,
        unit: 'one',
      }),
    );
  }
  return findings;
}

function targetFindings(input: CardInput): Raised[] {
  if (input.kind === 'breakout' || input.joint.data.target !== null) return [];
  return [raise('target_missing', () => ({}), about(input, 'refusal', 'target'))];
}
