import { looseningTorque } from '../bolting/torque.ts';
import { breakoutAllowance, COMMON_RATIO, seizedStudCeiling } from '../breakout/allowance.ts';
import type { OriginMark } from '../contract/joint.ts';
import type { BreakoutView, PassRow, Working } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import { atJoint, atSettings, raise } from '../findings/raise.ts';
import { showQuantity } from '../text/number.ts';
import { type Basis, loadOf } from './basis.ts';
import { capacityOf, type Dialled, dialFor, type Hydraulics } from './hydraulics.ts';
import type { CardInput } from './input.ts';
import { stressUnit, torqueUnit } from './show.ts';
import { scaleEnd, setBelow } from './without-pressure.ts';
import { known, number, ofThread, result } from './working.ts';

/** Everything a breakout card adds. */
export interface Breakout {
  readonly view: BreakoutView;
  readonly load: number | null;
  readonly startTorque: number;
  readonly start: Dialled | null;
  readonly passes: readonly PassRow[];
}

interface Installed {
  readonly torque: number;
  readonly origin: OriginMark;
  readonly source: string;
}

/** Torque the joint was tightened with: the newest record, else its target as an assumption. */
function installedTorque({ lastTightening }: CardInput, { targetTorque }: Basis): Installed | null {
  if (lastTightening !== null && lastTightening.torque > 0) {
    return {
      torque: lastTightening.torque,
      origin: 'entered',
      source: `tightening recorded for ${lastTightening.happenedAt.slice(0, 10)}`,
    };
  }
  if (targetTorque === null || targetTorque <= 0) return null;
  return { torque: targetTorque, origin: 'assumed', source: 'target torque; no tightening is recorded' };
}

/**
 * First and highest pressure for loosening, with what they rest on.
 *
 * Equation: Tfirst = Toff of a clean joint; Tmost = min(2.5·Ton, ceiling of a seized stud, ratings); pressures by the
 * certificate’s line.
 * @param input input of the card
 * @param basis what the joint alone says
 * @param hydraulics chosen set as it stands on the job’s first day
 * @returns pressures in Pa and torques in N·m, or null while the installed torque is not known
 * @example breakoutOf(loosening, basisOf(loosening), hydraulicsOf(loosening))?.view.installedTorque // 280 N·m
 * @source sign of the incline turned in VDI 2230-1’s relation; common practice for the allowance
 */
export function breakoutOf(input: CardInput, basis: Basis, hydraulics: Hydraulics): Breakout | null {
  const installed = installedTorque(input, basis);
  if (installed === null) return null;
  const { joint, friction } = basis;
  const thread = joint.thread?.value ?? null;
  const yieldStrength = joint.yieldStrength?.value ?? null;
  const load = loadOf(basis, installed.torque);
  const clean =
    load === null || thread === null ? null : looseningTorque(installed.torque, load, thread.pitch);
  const capacity = capacityOf(hydraulics)?.torque ?? scaleEnd(input);
  const ceiling = (model: 'elastic' | 'plastic') =>
    thread === null ||
    yieldStrength === null ||
    load === null ||
    friction.pair === null ||
    friction.bearingDiameter === null
      ? null
      : seizedStudCeiling(
          thread,
          yieldStrength,
          load,
          friction.pair.bearing,
          friction.bearingDiameter,
          model,
        );
  const elastic = ceiling('elastic');
  const startTorque = clean ?? installed.torque;
  const start = dialFor(hydraulics, startTorque, elastic === null ? [] : [elastic]);
  const highest = capacity === null ? null : Math.min(capacity, elastic ?? Number.POSITIVE_INFINITY);
  const never = highest === null ? null : dialFor(hydraulics, highest, [], 'below');
  const hydraulic = input.method === 'hydraulic wrench';
  const quantity = hydraulic ? 'pressure' : 'torque';
  return {
    load,
    startTorque,
    start,
    view: {
      installedTorque: installed.torque,
      installedOrigin: installed.origin,
      installedSource: installed.source,
      ratio: COMMON_RATIO,
      allowance: breakoutAllowance(installed.torque),
      cleanTorque: clean,
      capacity,
      studCeilingElastic: elastic,
      studCeilingPlastic: ceiling('plastic'),
      start: start?.dial ?? null,
      never: never?.dial ?? null,
    },
    passes: [
      {
        name: `First ${quantity}, ${clean === null ? 'installed torque' : 'clean joint'}`,
        order: 'star',
        tools: 1,
        groups: null,
        fraction: null,
        dial: start?.dial ?? null,
        set: setBelow(input, startTorque),
        torque: start?.torque ?? startTorque,
        load: null,
        stopWhen: 'the nut has moved a little; loosen all studs in stages before any nut comes off',
      },
      {
        name: `Highest ${quantity}`,
        order: 'star',
        tools: 1,
        groups: null,
        fraction: null,
        dial: never?.dial ?? null,
        set: highest === null ? null : setBelow(input, highest),
        torque: never?.torque ?? (hydraulic ? null : highest),
        load: null,
        stopWhen: `the nut has not moved at this ${quantity}: stop and take another method`,
      },
    ],
  };
}

/**
 * Says what stands against breaking out with this set.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param breakout pressures for loosening, or null while they are not known
 * @returns findings; none when nothing stands against it
 * @example checkBreakout({ ...input, kind: 'breakout' }, basis, null).length // 1
 * @source rule of this program
 */
export function checkBreakout(input: CardInput, basis: Basis, breakout: Breakout | null): Raised[] {
  const subject = input.joint.data.tag;
  const unit = torqueUnit(input);
  if (breakout === null || breakout.view.installedOrigin === 'assumed') {
    const instead = breakout === null ? null : showQuantity(breakout.view.installedTorque, unit);
    const installed = raise('installed_torque_unknown', () => ({ instead }), {
      severity: breakout === null ? 'refusal' : 'warning',
      subject,
      place: atJoint(input.joint.id, 'history'),
      source: 'records of this joint',
      value: breakout?.view.installedTorque ?? null,
      unit,
    });
    return breakout === null ? [installed] : [installed, ...againstAllowance(input, basis, breakout)];
  }
  return againstAllowance(input, basis, breakout);
}

function againstAllowance(input: CardInput, { joint, friction }: Basis, { view, load }: Breakout): Raised[] {
  const unit = torqueUnit(input);
  const subject = input.joint.data.tag;
  const findings: Raised[] = [];
  const { capacity, studCeilingElastic: elastic } = view;
  if (capacity !== null && view.allowance > capacity) {
    findings.push(
      raise(
        'breakout_above_wrench',
        () => ({
          allowance: showQuantity(view.allowance, unit),
          capacity: showQuantity(capacity, unit),
        }),
        {
          severity: 'warning',
          subject,
          place: atSettings('driveId'),
          source: 'common practice: up to 2.5 × installed torque',
          value: view.allowance,
          limit: capacity,
          unit,
        },
      ),
    );
  }
  if (elastic === null) {
    const missing = [
      ...(joint.yieldStrength === null ? ['yield strength'] : []),
      ...(load === null || friction.pair === null ? ['friction'] : []),
      ...(joint.nut === null ? ['nut'] : []),
      ...(joint.thread === null ? ['thread'] : []),
    ];
    findings.push(
      raise(
        'limit_unknown',
        () => ({
          limit: 'Torque at which a seized stud yields',
          needs: `Enter ${missing.join(', ')}; until then the highest pressure is the set’s own.`,
        }),
        { severity: 'warning', subject, place: atJoint(input.joint.id, 'bolting'), source: 'von Mises' },
      ),
    );
  } else if (view.allowance > elastic) {
    findings.push(
      raise(
        'breakout_above_stud',
        () => ({
          allowance: showQuantity(view.allowance, unit),
          elastic: showQuantity(elastic, unit),
          plastic: showQuantity(view.studCeilingPlastic ?? elastic, unit),
        }),
        {
          severity: 'warning',
          subject,
          place: atJoint(input.joint.id, 'bolting'),
          source: 'von Mises with the section moduli of VDI 2230-1',
          value: view.allowance,
          limit: elastic,
          unit,
        },
      ),
    );
  }
  return findings;
}

/**
 * Shows how allowance, clean torque and stud ceiling came about.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param breakout pressures for loosening
 * @returns workings, each naming its relation, inputs and source
 * @example breakoutWorkings(loosening, basisOf(loosening), breakoutOf(loosening, basisOf(loosening),
 * hydraulicsOf(loosening))).length > 1 // true
 * @source each working names its own
 */
export function breakoutWorkings(
  input: CardInput,
  { joint, friction }: Basis,
  { view, load }: Breakout,
): Working[] {
  const unit = torqueUnit(input);
  const thread = joint.thread?.value ?? null;
  const installed = number(
    'Ton',
    'installed torque',
    view.installedTorque,
    unit,
    view.installedOrigin,
    view.installedSource,
  );
  const loadInput = number(
    'F',
    'installed load, taken as still there',
    load,
    'kN',
    'calculated',
    'F = Ton / ( K · D )',
  );
  const workings: Working[] = [
    {
      of: 'breakout',
      title: 'Breakout torque to be ready for',
      relation: 'T = 2.5 · Ton',
      inputs: [installed],
      result: result('T', 'allowance', view.allowance, unit),
      source: 'common practice, no published source known',
    },
  ];
  if (view.cleanTorque !== null) {
    workings.push({
      of: 'breakout',
      title: 'Loosening torque of a clean joint',
      relation: 'Toff = Ton − F · P / π',
      inputs: [installed, loadInput, known('P', 'pitch', joint.thread, thread?.pitch ?? null, 'mm')],
      result: result('Toff', 'clean loosening torque', view.cleanTorque, unit),
      source: 'VDI 2230-1 with the sign of the incline turned',
    });
  }
  if (view.studCeilingElastic !== null && friction.pair !== null) {
    workings.push({
      of: 'studCeiling',
      title: 'Torque at which a seized stud yields',
      relation: 'T = Wp · √( ( Re² − ( F / As )² ) / 3 ) + F · μb · Db / 2,  Wp = π · ds³ / 16 (elastic)',
      inputs: [
        loadInput,
        known(
          'Re',
          'yield strength',
          joint.yieldStrength,
          joint.yieldStrength?.value ?? null,
          stressUnit(input),
        ),
        ofThread('As', thread),
        ofThread('ds', thread),
        number(
          'μb',
          'friction of the nut face',
          friction.pair.bearing,
          'one',
          friction.assumed ? 'assumed' : 'calculated',
          friction.pair.rule,
        ),
        known('Db', 'mean bearing diameter', joint.nut, friction.bearingDiameter, 'mm'),
        number(
          '',
          'the same with the plastic section modulus',
          view.studCeilingPlastic,
          unit,
          'calculated',
          'π · ds³ / 12',
        ),
      ],
      result: result('T', 'torque at first yield', view.studCeilingElastic, unit),
      source: 'von Mises; VDI 2230-1',
    });
  }
  return workings;
}
