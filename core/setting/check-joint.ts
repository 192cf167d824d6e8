import type { Finding, Severity } from '../findings/finding.ts';
import { atJoint, raise } from '../findings/raise.ts';
import type { Known } from '../joint/known.ts';
import { confirmationOf } from '../joint/site-tables.ts';
import { isDisputed, needsConfirmation, statusText } from '../reference/status.ts';
import type { TableCell } from '../reference/table-cells.ts';
import type { Basis } from './basis.ts';
import { checkStandard } from './check-standard.ts';
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
export function checkJoint(input: CardInput, basis: Basis): Finding[] {
  return [
    ...missingGeometry(input, basis),
    ...missingStrength(input, basis),
    ...frictionFindings(input, basis),
    ...targetFindings(input),
    ...unconfirmed(input, basis),
    ...checkStandard(input, basis),
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

type NamedValue = readonly [what: string, field: string, known: Known<unknown> | null];

function unconfirmed(input: CardInput, { joint, gaskets }: Basis): Finding[] {
  const { count, thread, circle, yieldStrength, nut, studLength, radialGap, ring } = joint;
  const ofGaskets = gaskets.flatMap((gasket): (Known<unknown> | null)[] => Object.values(gasket.values));
  const all = [count, thread, circle, yieldStrength, nut, studLength, radialGap, ring, ...ofGaskets];
  if (!all.some(isDoubtful)) return [];
  const values: NamedValue[] = [
    ['Flange table', 'count', count],
    ['Flange table', 'thread', thread],
    ['Flange table', 'circle', circle],
    ['Yield strength', 'grade', yieldStrength],
    ['Nut', 'nutSeries', nut],
    ['Flange table', 'studLength', studLength],
    ['Hub', 'radialGap', radialGap],
    ['Ring of the flange', 'gasket', ring],
    ...ofGaskets.map((known): NamedValue => ['Gasket', 'gasket', known]),
  ];
  // One table row fills several values: it is named once, with all of them.
  const rows = Map.groupBy(
    values.flatMap(([what, field, known]) => (known === null ? [] : [{ what, field, known }])),
    ({ known }) => known.source,
  );
  return [...rows.values()].flatMap((sameRow) => {
    const [first] = sameRow;
    const status = first?.known.status ?? null;
    const text = status === null ? null : statusText(status);
    if (first === undefined || status === null || text === null) return [];
    const confirm = needsConfirmation(status);
    if (!(confirm || isDisputed(status))) return [];
    const { what, field, known } = first;
    const cells = sameRow.flatMap((one) => one.known.cell ?? []);
    const open = cells.filter((cell) => confirmationOf(input.site, cell) === null);
    const facts = { what, source: known.source, status: text };
    if (cells.length > 0 && open.length === 0) {
      const by = confirmedBy(input, cells);
      return [
        raise(
          'table_value_confirmed',
          { ...facts, by },
          { ...about(input, 'note', field, known.source), value: text },
        ),
      ];
    }
    return [
      raise(
        'table_value_unconfirmed',
        { ...facts, note: known.note },
        {
          ...about(input, confirm ? 'warning' : 'note', field, known.source),
          value: text,
          ...confirmable(open),
        },
      ),
    ];
  });
}

function isDoubtful(known: Known<unknown> | null): boolean {
  return known !== null && known.status !== null && statusText(known.status) !== null;
}

/** "Number of studs 12: Greta Example, 2026-03-16, own copy of the standard" */
function confirmedBy(input: CardInput, cells: readonly TableCell[]): string[] {
  return cells.flatMap((cell) => {
    const found = confirmationOf(input.site, cell);
    if (found === null) return [];
    return [`${cell.name} ${cell.value}: ${found.person}, ${found.at.slice(0, 10)}, ${found.sourceSeen}`];
  });
}

function confirmable(cells: readonly TableCell[]) {
  const [first] = cells;
  if (first === undefined) return {};
  const values = cells.map(({ field, value }) => ({ field, value }));
  return { confirm: { table: first.table, key: first.key, values } };
}
