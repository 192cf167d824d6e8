import { certifiedRange } from '../calibration/setting.ts';
import type { Working } from '../contract/setting.ts';
import { neighbourGap } from '../joint/space.ts';
import { showNumber } from '../text/number.ts';
import { fromSI, toSI, UNITS } from '../units/units.ts';
import type { Basis } from './basis.ts';
import { headOf } from './check-fit.ts';
import { studProtrusion } from './check-stud.ts';
import type { capacityOf, Dialled, Hydraulics } from './hydraulics.ts';
import type { CardInput } from './input.ts';
import { pressureUnit, torqueUnit } from './show.ts';
import { known, number, result, words } from './working.ts';

function lineInputs(input: CardInput, { certificate, line }: Hydraulics) {
  const source = `certificate ${certificate?.data.number ?? ''}, ${line?.points.length ?? 0} points`;
  return [
    number(
      'a',
      'torque at zero pressure, fitted',
      line?.intercept ?? null,
      torqueUnit(input),
      'certificate',
      source,
    ),
    // N·m/Pa has no unit of its own here: the slope is told as torque per 1 bar, 1 psi or 1 MPa of this gauge.
    words('b', 'slope of the line', slopeText(input, line?.slope ?? 0), 'certificate', source),
  ];
}

function slopeText(input: CardInput, slope: number): string {
  const pressure = pressureUnit(input);
  const torque = torqueUnit(input);
  const perUnit = fromSI(toSI(1, pressure) * slope, torque);
  return `${showNumber(perUnit, 6)} ${UNITS[torque].label}/${UNITS[pressure].label}`;
}

/**
 * Shows how the number on the gauge came about.
 *
 * @param input input of the card
 * @param hydraulics chosen set as it stands on the job’s first day
 * @param torque T wanted, N·m, at least 0
 * @param dialled mark with its true pressure
 * @returns working, or null without a certificate line
 * @example dialWorking(input, hydraulics, 383.441, dialFor(hydraulics, 383.441))?.of // 'dial'
 * @source each working names its own
 */
export function dialWorking(
  input: CardInput,
  hydraulics: Hydraulics,
  torque: number,
  dialled: Dialled,
): Working | null {
  const { gauge } = input.set;
  if (dialled.dial === null || gauge === null) return null;
  const unit = pressureUnit(input);
  const { graduation } = gauge.data.properties;
  return {
    of: 'dial',
    title: 'Pressure to dial',
    relation:
      'p = ( T − a ) / b, corrected by the gauge’s certificate, to the nearest mark that exceeds no limit',
    inputs: [
      number('T', 'torque', torque, torqueUnit(input), 'calculated', 'torque to aim at'),
      ...lineInputs(input, hydraulics),
      number('p', 'pressure before rounding', dialled.wanted, unit, 'calculated', 'line of the certificate'),
      hydraulics.correction === null || !dialled.corrected
        ? words('', 'gauge correction', 'none known, taken as zero', 'assumed', gauge.data.number)
        : number(
            'pt',
            'true pressure at the dialled mark',
            dialled.pressure,
            unit,
            'certificate',
            `certificate of gauge ${gauge.data.number}`,
          ),
      number(
        '',
        'one mark of the gauge',
        graduation.si,
        graduation.unit,
        'entered',
        `gauge ${gauge.data.number}`,
      ),
    ],
    result: result('p', 'pressure to dial', dialled.dial.pressure, unit),
    source: 'JCGM 100:2008 (GUM), Annex H.3',
  };
}

/**
 * Shows what the dialled mark really gives.
 *
 * @param input input of the card
 * @param hydraulics chosen set as it stands on the job’s first day
 * @param dialled mark with its true pressure
 * @returns working, or null without a certificate line
 * @example torqueWorking(input, hydraulics, dialFor(hydraulics, 383.441))?.of // 'torque'
 * @source each working names its own
 */
export function torqueWorking(input: CardInput, hydraulics: Hydraulics, dialled: Dialled): Working | null {
  if (dialled.torque === null) return null;
  return {
    of: 'torque',
    title: 'Torque at the dialled pressure',
    relation: 'T = a + b · p',
    inputs: [
      ...lineInputs(input, hydraulics),
      number(
        'p',
        'true pressure at the mark',
        dialled.pressure,
        pressureUnit(input),
        'calculated',
        'pressure to dial',
      ),
    ],
    result: result('T', 'torque', dialled.torque, torqueUnit(input)),
    source: 'JCGM 100:2008 (GUM), Annex H.3',
  };
}

/**
 * Shows what the set can give at most.
 *
 * @param input input of the card
 * @param hydraulics chosen set as it stands on the job’s first day
 * @param capacity largest torque with what governs, or null
 * @returns working, or null while the capacity is not known
 * @example capacityWorking(input, hydraulics, null) // null
 * @source each working names its own
 */
export function capacityWorking(
  input: CardInput,
  hydraulics: Hydraulics,
  capacity: ReturnType<typeof capacityOf>,
): Working | null {
  if (capacity === null || hydraulics.line === null) return null;
  const unit = pressureUnit(input);
  return {
    of: 'capacity',
    title: 'Largest torque of this set',
    relation:
      'T = a + b · p at the lowest of ratings, scale and highest certified point, not above a torque rating',
    inputs: [
      ...lineInputs(input, hydraulics),
      number('p', 'governing pressure', capacity.pressure, unit, 'calculated', capacity.governs),
      number(
        '',
        'highest certified point',
        certifiedRange(hydraulics.line).highest,
        unit,
        'certificate',
        `certificate ${hydraulics.certificate?.data.number ?? ''}`,
      ),
      words('', 'governs', capacity.governs, 'calculated', 'the set as chosen'),
    ],
    result: result('T', 'largest torque', capacity.torque, torqueUnit(input)),
    source: 'lowest-rated part governs: common practice',
  };
}

/**
 * Shows stud protrusion and the room beside the neighbour, where the inputs are known.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @returns workings, each naming its relation, inputs and source
 * @example geometryWorkings(input, basis).length // 2
 * @source each working names its own
 */
export function geometryWorkings(input: CardInput, basis: Basis): Working[] {
  const { joint } = basis;
  const workings: Working[] = [];
  const { value } = studProtrusion(basis);
  if (value !== null) {
    workings.push({
      of: 'protrusion',
      title: 'Stud beyond the nut, each end',
      relation: 'z = ( L − grip − 2 · m ) / 2, stud centred',
      inputs: [
        known('L', 'stud length', joint.studLength, joint.studLength?.value ?? null, 'mm'),
        known('grip', 'grip length', joint.grip, joint.grip?.value ?? null, 'mm'),
        known('m', 'largest nut height', joint.nut, joint.nut?.value.height ?? null, 'mm'),
        number('z/P', 'threads showing', value.threads, 'one', 'calculated', 'this working'),
      ],
      result: result('z', 'protrusion', value.perEnd, 'mm'),
      source: 'geometry; two to three threads showing is common practice',
    });
  }
  const head = headOf(input);
  const count = joint.count?.value ?? null;
  if (head === null || joint.circle === null || joint.nut === null || count === null || count < 2)
    return workings;
  const corners = joint.nut.value.acrossCorners;
  workings.push({
    of: 'space',
    title: 'Free space to the neighbour’s nut',
    relation: 'gap = Dbc · sin( π / N ) − r − C / 2',
    inputs: [
      known('Dbc', 'bolt circle', joint.circle, joint.circle.value, 'mm'),
      known('N', 'number of studs', joint.count, count, 'one'),
      number('r', 'clearance radius of the head', head.radius, 'mm', 'entered', head.tool),
      known('C', 'largest width across corners of the nut', joint.nut, corners, 'mm'),
    ],
    result: result('gap', 'free space', neighbourGap(joint.circle.value, count, head.radius, corners), 'mm'),
    source: 'plane geometry',
  });
  return workings;
}
