import type { SuitRow } from '../contract/setting.ts';
import { openingOf, seat } from '../tools/fit.ts';
import { ratedParts, wrenchParts } from '../tools/rating.ts';
import { assess } from './assessment.ts';
import { checkCertifiedRange, checkDriveCertificate } from './check-certificates.ts';
import { checkCounterhold } from './check-counterhold.ts';
import { checkFit } from './check-fit.ts';
import { checkHead } from './check-head.ts';
import { checkCustody, checkRatings } from './check-set.ts';
import { checkToolRoom } from './check-tool-room.ts';
import { dialFor, hydraulicsOf } from './hydraulics.ts';
import { type AnyTool, type CardInput, type Head, NO_SET, type ToolOnRegister } from './input.ts';
import { gaugeRow, lineRow } from './suit-lines.ts';
import { type Job, refusals, suitRow } from './suit-row.ts';

/**
 * Which tools of the register suit this joint, each alone with what is chosen already, and why not.
 *
 * @param input input of the card
 * @param tools tools to look at, of any class
 * @returns one row for each part of a hydraulic set, in the order given; “not known” while nut, torque or pressure are
 * not known, never a pass
 * @example suitsOf(complete, [complete.set.drive, complete.set.cassette]).map((row) => row.state) // ['suits', 'suits']
 * @source the same checks as for a chosen set; only what refuses counts against a tool
 */
export function suitsOf(input: CardInput, tools: readonly AnyTool[]): SuitRow[] {
  const { basis, work, input: seen } = assess(input);
  const { torque } = work;
  const { drive, gauge } = seen.set;
  const hydraulics = hydraulicsOf({ ...seen, set: { ...NO_SET, drive, gauge } });
  const dialled = torque === null ? null : dialFor(hydraulics, torque);
  const job: Job = {
    input: seen,
    basis,
    torque,
    pressure: dialled?.dial?.pressure ?? dialled?.wanted ?? null,
  };
  return tools.flatMap((tool) => rowOf(job, tool) ?? []);
}

/** Null for a tool that is no part of a hydraulic set. */
function rowOf(job: Job, tool: AnyTool): SuitRow | null {
  if (isOf(tool, 'drive unit')) return driveRow(job, tool);
  if (isOf(tool, 'cassette') || isOf(tool, 'square-drive head')) return headRow(job, tool);
  if (isOf(tool, 'reducer')) return reducerRow(job, tool);
  if (isOf(tool, 'counterhold wrench')) return counterholdRow(job, tool);
  if (isOf(tool, 'gauge')) return gaugeRow(job, tool);
  if (isOf(tool, 'pump') || isOf(tool, 'hose') || isOf(tool, 'coupler')) return lineRow(job, tool);
  return null;
}

type Class = AnyTool['data']['properties']['class'];

function isOf<C extends Class>(tool: AnyTool, toolClass: C): tool is Extract<AnyTool, ToolOnRegister<C>> {
  return tool.data.properties.class === toolClass;
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
  return suitRow(drive, {
    against: [...other, ...refusals(findings)],
    unknown: torque === null ? ['torque not known'] : [],
  });
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
  return suitRow(head, {
    against: refusals(findings),
    unknown: unknownAt(nut, torque),
    reducers: set.reducers,
  });
}

function unknownAt(nut: number | null, torque: number | null): string[] {
  return [...(nut === null ? ['nut not known'] : []), ...(torque === null ? ['torque not known'] : [])];
}

/** In the chosen head alone, or after the reducers that are chosen already. */
function reducerRow(job: Job, reducer: ToolOnRegister<'reducer'>): SuitRow {
  const { input, basis, torque } = job;
  const others = input.set.reducers.filter(({ id }) => id !== reducer.id);
  const fitting = (reducers: readonly ToolOnRegister<'reducer'>[]) => {
    const set = { ...NO_SET, cassette: input.set.cassette, reducers };
    // What the head has against the joint is said of the head.
    return refusals(
      checkFit({ ...input, set }, basis, torque).filter(({ subject }) => subject === reducer.data.number),
    );
  };
  const alone = fitting([reducer]);
  const fit = alone.length === 0 || others.length === 0 ? alone : fitting([...others, reducer]);
  const set = { ...NO_SET, reducers: [reducer] };
  const findings = [
    ...checkCustody(reducer),
    ...checkToolRoom({ ...input, set }),
    ...checkRatings(input, wrenchParts(set), torque, null),
  ];
  return suitRow(reducer, {
    against: [...fit, ...refusals(findings)],
    unknown: unknownAt(basis.joint.nut?.value.acrossFlats ?? null, torque),
  });
}

function counterholdRow(job: Job, counterhold: ToolOnRegister<'counterhold wrench'>): SuitRow {
  const { input, basis, torque } = job;
  const alone = { ...input, set: { ...NO_SET, counterhold } };
  const findings = [
    ...checkCustody(counterhold),
    ...checkToolRoom(alone),
    ...checkCounterhold(alone, basis),
    ...checkRatings(alone, ratedParts(alone.set), torque, null),
  ];
  return suitRow(counterhold, {
    against: refusals(findings),
    unknown: unknownAt(basis.joint.nut?.value.acrossFlats ?? null, torque),
  });
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
