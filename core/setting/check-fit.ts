import type { Raised } from '../findings/finding.ts';
import { atJoint, atSettings, atTool, raise } from '../findings/raise.ts';
import { neighbourGap } from '../joint/space.ts';
import { showEntered, showQuantity } from '../text/number.ts';
import { openingOf, type Remedy, remedies, seat } from '../tools/fit.ts';
import type { Basis } from './basis.ts';
import type { CardInput, Head, ToolOnRegister } from './input.ts';

type Opening = Head | ToolOnRegister<'reducer'>;

/**
 * Says whether the chain from drive unit to nut fits, and has room on the joint.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param torque that has to pass, N·m, at least 0, or null when not known
 * @returns findings; none when nothing stands against it
 * @example checkFit({ ...input, set: { ...input.set, cassette: null } }, basis, 384).length > 0 // true
 * @source nominal sizes of the nut standard; plane geometry
 */
export function checkFit(input: CardInput, basis: Basis, torque: number | null): Raised[] {
  return [
    ...familyFindings(input),
    ...reducerFindings(input),
    ...openingFindings(input, basis, torque),
    ...neighbourFindings(input, basis),
    ...hubFindings(input, basis),
  ];
}

function familyFindings({ set: { drive, cassette } }: CardInput): Raised[] {
  if (drive === null || cassette === null) return [];
  const families = { drive: drive.data.properties.family, cassette: cassette.data.properties.family };
  if (families.drive === families.cassette) return [];
  return [
    raise('family_differs', () => families, {
      severity: 'refusal',
      subject: cassette.data.number,
      place: atSettings('cassetteId'),
      source: 'families as the site defines them',
      value: families.cassette,
      limit: families.drive,
    }),
  ];
}

function reducerFindings({ set: { cassette, reducers } }: CardInput): Raised[] {
  const findings: Raised[] = [];
  let into: Opening | null = cassette;
  for (const reducer of reducers) {
    const { outerAcrossFlats } = reducer.data.properties;
    const seated = into;
    if (seated !== null && seat(openingOf(seated), outerAcrossFlats.si) !== 'fits') {
      findings.push(
        raise(
          'reducer_does_not_fit',
          () => ({
            reducer: showEntered(outerAcrossFlats),
            into: showEntered(seated.data.properties.acrossFlats),
          }),
          {
            severity: 'refusal',
            subject: reducer.data.number,
            place: atSettings('reducerIds'),
            source: 'nominal sizes',
            value: outerAcrossFlats.si,
            limit: seated.data.properties.acrossFlats.si,
            unit: outerAcrossFlats.unit,
          },
        ),
      );
    }
    into = reducer;
  }
  return findings;
}

/** The opening that goes onto the nut: the last reducer's, else the cassette's. */
function lastOpening({ set: { cassette, reducers } }: CardInput): Opening | null {
  return reducers.at(-1) ?? cassette;
}

function openingFindings(input: CardInput, { joint }: Basis, torque: number | null): Raised[] {
  const opening = lastOpening(input);
  const nut = joint.nut?.value ?? null;
  if (opening === null) return [];
  const { acrossFlats, looseness } = opening.data.properties;
  const subject = opening.data.number;
  if (nut === null) return looseness === null ? [loosenessUnknown(opening)] : [];
  const sits = seat(openingOf(opening), nut.acrossFlats);
  if (sits === 'fits') return looseness === null ? [loosenessUnknown(opening)] : [];
  const code = sits === 'too small' ? 'opening_too_small' : 'opening_too_large';
  return [
    raise(
      code,
      () => ({
        opening: showEntered(acrossFlats),
        nut: showQuantity(nut.acrossFlats, nut.series === 'ASME B18.2.2 heavy hex' ? 'in' : 'mm', 5),
        remedies: remedies(nut.acrossFlats, input, torque).map(remedyText),
      }),
      {
        severity: 'refusal',
        subject,
        place: atSettings(input.set.reducers.length > 0 ? 'reducerIds' : 'cassetteId'),
        source: nut.source,
        value: acrossFlats.si,
        limit: nut.acrossFlats,
        unit: 'mm',
      },
    ),
  ];
}

/**
 * Says that the looseness of an opening is not known.
 *
 * @param opening tool of the register with a hex opening
 * @returns a note
 * @example loosenessUnknown(input.set.cassette).severity // 'note'
 * @source rule of this program
 */
export function loosenessUnknown(opening: Opening | ToolOnRegister<'counterhold wrench'>): Raised {
  return raise('looseness_unknown', () => ({ opening: showEntered(opening.data.properties.acrossFlats) }), {
    severity: 'note',
    subject: opening.data.number,
    place: atTool(opening, 'looseness'),
    source: 'no site limit entered',
  });
}

function remedyText(remedy: Remedy): string {
  if (remedy.kind === 'cassette') {
    const { number, properties } = remedy.cassette.data;
    return `${properties.class} ${number}, ${showEntered(properties.acrossFlats)}`;
  }
  const { number, properties } = remedy.reducer.data;
  return `reducer ${number}, ${showEntered(properties.outerAcrossFlats)} to ${showEntered(properties.acrossFlats)}`;
}

/**
 * Finds the clearance radius of the head on the nut, with the part it belongs to.
 *
 * @param input input of the card
 * @returns radius in m and the part, or null when neither part states one
 * @example headOf(input)?.radius // 0.032 m
 * @source radius as entered for the tool
 */
export function headOf({ set: { cassette, drive } }: CardInput): { radius: number; tool: string } | null {
  const own = cassette?.data.properties.headRadius ?? null;
  if (cassette !== null && own !== null) return { radius: own.si, tool: cassette.data.number };
  const drives = drive?.data.properties.headRadius ?? null;
  return drive === null || drives === null ? null : { radius: drives.si, tool: drive.data.number };
}

function neighbourFindings(input: CardInput, { joint }: Basis): Raised[] {
  const head = headOf(input);
  const count = joint.count?.value ?? null;
  const about = { subject: input.joint.data.tag, source: 'plane geometry' };
  if (count === 1) return [];
  if (head === null || count === null || joint.circle === null || joint.nut === null) {
    const missing = [
      ...(head === null ? ['radius of the head'] : []),
      ...(count === null ? ['number of studs'] : []),
      ...(joint.circle === null ? ['bolt circle'] : []),
      ...(joint.nut === null ? ['nut'] : []),
    ];
    const place = head === null ? atSettings('cassetteId') : atJoint(input.joint.id, 'circle');
    return [
      raise('clearance_unknown', () => ({ check: 'neighbour', missing }), {
        ...about,
        severity: 'note',
        place,
      }),
    ];
  }
  const gap = neighbourGap(joint.circle.value, count, head.radius, joint.nut.value.acrossCorners);
  if (gap >= 0) return [];
  return [
    raise('neighbour_in_the_way', () => ({ overlap: showQuantity(-gap, 'mm', 2) }), {
      ...about,
      severity: 'refusal',
      subject: head.tool,
      place: atSettings('cassetteId'),
      value: gap,
      limit: 0,
      unit: 'mm',
    }),
  ];
}

function hubFindings(input: CardInput, { joint }: Basis): Raised[] {
  const head = headOf(input);
  const about = { subject: input.joint.data.tag, source: 'plane geometry' };
  if (head === null || joint.radialGap === null) {
    const missing = [
      ...(head === null ? ['radius of the head'] : []),
      ...(joint.radialGap === null ? ['free distance from the stud’s centre to hub or pipe'] : []),
    ];
    const place = joint.radialGap === null ? atJoint(input.joint.id, 'radialGap') : atSettings('cassetteId');
    return [
      raise('clearance_unknown', () => ({ check: 'hub', missing }), { ...about, severity: 'note', place }),
    ];
  }
  const gap = joint.radialGap.value;
  if (head.radius <= gap) {
    if (joint.radialGap.origin === 'entered') return [];
    const place = atJoint(input.joint.id, 'radialGap');
    const missing = ['free distance past the fillet of the hub (the flange table has the hub alone)'];
    return [
      raise('clearance_unknown', () => ({ check: 'hub', missing }), { ...about, severity: 'note', place }),
    ];
  }
  return [
    raise(
      'hub_in_the_way',
      () => ({ head: showQuantity(head.radius, 'mm', 3), gap: showQuantity(gap, 'mm', 3) }),
      {
        ...about,
        severity: 'refusal',
        subject: head.tool,
        place: atSettings('cassetteId'),
        value: head.radius,
        limit: gap,
        unit: 'mm',
      },
    ),
  ];
}
