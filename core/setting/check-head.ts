import type { Raised } from '../findings/finding.ts';
import { atJoint, atSettings, atTool, raise } from '../findings/raise.ts';
import { showQuantity } from '../text/number.ts';
import type { Basis } from './basis.ts';
import { studProtrusion } from './check-stud.ts';
import type { CardInput, Head } from './input.ts';

const SAME_SIZE = 1e-6;

/**
 * Whether the stud's end has room in the head, and the head along the stud.
 *
 * Equation: z ≤ room for the stud; D ≤ bore; height of the head ≤ free distance along the stud.
 * @param input input of the card
 * @param basis what the joint alone says
 * @returns findings; none when nothing stands against it, or without a head
 * @example checkHead(complete, basisOf(complete)).length // 0
 * @source plane geometry; sizes as entered for head and joint
 */
export function checkHead(input: CardInput, basis: Basis): Raised[] {
  const head = input.set.cassette;
  if (head === null) return [];
  return [...studInHead(basis, head), ...alongStud(input, head)];
}

function studInHead(basis: Basis, head: Head): Raised[] {
  const { bore, studRoom, openThrough } = head.data.properties;
  const thread = basis.joint.thread?.value ?? null;
  const stands = studProtrusion(basis).value?.perEnd ?? null;
  const about = { subject: head.data.number, source: 'plane geometry' };
  const findings: Raised[] = [];
  if (bore !== null && thread !== null && thread.diameter > bore.si + SAME_SIZE) {
    findings.push(
      raise(
        'stud_wider_than_bore',
        () => ({
          stud: showQuantity(thread.diameter, bore.unit, 4),
          bore: showQuantity(bore.si, bore.unit, 4),
        }),
        {
          ...about,
          severity: 'refusal',
          place: atSettings('cassetteId'),
          value: thread.diameter,
          limit: bore.si,
          unit: bore.unit,
        },
      ),
    );
  }
  if (!openThrough && studRoom !== null && stands !== null && stands > studRoom.si + SAME_SIZE) {
    findings.push(
      raise(
        'stud_hits_head',
        () => ({
          stands: showQuantity(stands, studRoom.unit, 3),
          room: showQuantity(studRoom.si, studRoom.unit, 3),
        }),
        {
          ...about,
          severity: 'refusal',
          place: atSettings('cassetteId'),
          value: stands,
          limit: studRoom.si,
          unit: studRoom.unit,
        },
      ),
    );
  }
  const missing = [
    ...(bore === null ? ['bore of the head'] : []),
    ...(!openThrough && studRoom === null ? ['room for the stud’s end in the head'] : []),
  ];
  if (missing.length > 0) {
    findings.push(
      raise('clearance_unknown', () => ({ check: 'stud', missing }), {
        ...about,
        severity: 'note',
        place: atTool(head, bore === null ? 'bore' : 'studRoom'),
      }),
    );
  }
  return findings;
}

function alongStud({ joint }: CardInput, head: Head): Raised[] {
  const { height } = head.data.properties;
  // A joint entered before this was asked for does not say.
  const axialGap = joint.data.space.axialGap ?? null;
  const about = { subject: head.data.number, source: 'plane geometry' };
  if (height === null || axialGap === null) {
    const missing = [
      ...(height === null ? ['height of the head'] : []),
      ...(axialGap === null ? ['free distance along the stud'] : []),
    ];
    const place = height === null ? atTool(head, 'height') : atJoint(joint.id, 'axialGap');
    return [
      raise('clearance_unknown', () => ({ check: 'along the stud', missing }), {
        ...about,
        severity: 'note',
        place,
      }),
    ];
  }
  if (height.si <= axialGap.si + SAME_SIZE) return [];
  return [
    raise(
      'head_too_high',
      () => ({
        height: showQuantity(height.si, height.unit, 3),
        gap: showQuantity(axialGap.si, height.unit, 3),
      }),
      {
        ...about,
        severity: 'refusal',
        place: atSettings('cassetteId'),
        value: height.si,
        limit: axialGap.si,
        unit: height.unit,
      },
    ),
  ];
}
