import type { SuitRow } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import { openingOf, seat } from '../tools/fit.ts';
import { wrenchParts } from '../tools/rating.ts';
import { assess } from './assessment.ts';
import type { Basis } from './basis.ts';
import { checkCertifiedRange, checkDriveCertificate } from './check-certificates.ts';
import { checkFit } from './check-fit.ts';
import { checkHead } from './check-head.ts';
import { checkCustody, checkRatings } from './check-set.ts';
import { checkToolRoom } from './check-tool-room.ts';
import { dialFor, hydraulicsOf } from './hydraulics.ts';
import { type CardInput, type Head, NO_SET, type ToolOnRegister } from './input.ts';

/** Everything on the register that could turn this joint's nuts. */
export interface Candidates {
  readonly drives: readonly ToolOnRegister<'drive unit'>[];
  readonly heads: readonly Head[];
}

/**
 * Which heads and drive units of the register suit this joint, each alone with what is chosen already, and why not.
 *
 * @param input input of the card
 * @param candidates heads and drive units to look at
 * @returns one row each; “not known” while nut or torque are not known, never a pass
 * @example suitsOf(complete, { drives: [complete.set.drive], heads: [complete.set.cassette] }).map((row) => row.state)
 * // ['suits', 'suits']
 * @source the same checks as for a chosen set; only what refuses counts against a tool
 */
export function suitsOf(input: CardInput, { drives, heads }: Candidates): SuitRow[] {
  const { basis, work, input: seen } = assess(input);
  const job: Job = { input: seen, basis, torque: work.torque };
  return [...drives.map((drive) => driveRow(job, drive)), ...heads.map((head) => headRow(job, head))];
}

interface Job {
  readonly input: CardInput;
  readonly basis: Basis;
  /** N·m */
  readonly torque: number | null;
}

function driveRow({ input, torque }: Job, drive: ToolOnRegister<'drive unit'>): SuitRow {
  const alone = { ...input, set: { ...NO_SET, drive, gauge: input.set.gauge } };
  const hydraulics = hydraulicsOf(alone);
  const dialled = torque === null ? null : dialFor(hydraulics, torque);
  const pressure = dialled?.pressure ?? dialled?.wanted ?? null;
  const chosen = input.set.cassette?.data.properties.family ?? null;
  const family = drive.data.properties.family;
  const findings = [
    ...checkCustody(drive),
    ...checkToolRoom({ ...alone, set: { ...NO_SET, drive } }),
    ...checkDriveCertificate(alone, hydraulics),
    ...checkRatings(alone, wrenchParts(alone.set), dialled?.torque ?? torque, pressure),
    ...(pressure === null
      ? []
      : checkCertifiedRange(alone, hydraulics, [{ name: 'Full', pressure, final: true }])),
  ];
  const other =
    chosen !== null && chosen !== family ? [`family “${family}”, the head is of “${chosen}”`] : [];
  return row(drive, [], [...other, ...refusals(findings)], torque === null ? ['torque not known'] : []);
}

function headRow({ input, basis, torque }: Job, head: Head): SuitRow {
  const nut = basis.joint.nut?.value.acrossFlats ?? null;
  const reducer = nut === null ? null : reducerFor(input, head, nut);
  const set = {
    ...NO_SET,
    drive: input.set.drive,
    cassette: head,
    reducers: reducer === null ? [] : [reducer],
  };
  const alone = { ...input, set };
  const findings = [
    ...checkCustody(head),
    ...checkToolRoom({ ...alone, set: { ...set, drive: null } }),
    ...checkFit(alone, basis, torque),
    ...checkHead(alone, basis),
    ...checkRatings(alone, wrenchParts({ ...set, drive: null }), torque, null),
  ];
  const unknown = [
    ...(nut === null ? ['nut not known'] : []),
    ...(torque === null ? ['torque not known'] : []),
  ];
  return row(head, set.reducers, refusals(findings), unknown);
}

/** A reducer that brings a head to the nut, where the head alone does not fit; the smallest number wins. */
function reducerFor({ onRegister }: CardInput, head: Head, nut: number): ToolOnRegister<'reducer'> | null {
  if (seat(openingOf(head), nut) === 'fits') return null;
  return (
    onRegister.reducers.find(
      (reducer) =>
        reducer.data.status === 'available' &&
        seat(openingOf(head), reducer.data.properties.outerAcrossFlats.si) === 'fits' &&
        seat(openingOf(reducer), nut) === 'fits',
    ) ?? null
  );
}

function refusals(findings: readonly Raised[]): string[] {
  const against = findings.filter(({ severity }) => severity === 'refusal');
  return against.map(({ words }) => {
    const { title, detail } = words();
    return `${title}: ${detail}`;
  });
}

function row(
  { id, data }: ToolOnRegister<'drive unit'> | Head,
  reducers: readonly ToolOnRegister<'reducer'>[],
  against: readonly string[],
  unknown: readonly string[],
): SuitRow {
  const state = against.length > 0 ? 'does not suit' : unknown.length > 0 ? 'not known' : 'suits';
  return {
    toolId: id,
    number: data.number,
    class: data.properties.class,
    state,
    reducerIds: reducers.map((reducer) => reducer.id),
    reasons: [...against, ...unknown],
  };
}
