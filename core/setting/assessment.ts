import type { Raised } from '../findings/finding.ts';
import { inOrder } from '../findings/order.ts';
import { atSettings, raise } from '../findings/raise.ts';
import { jointOfSet } from '../joint/bolt-set.ts';
import { jointGaskets } from '../joint/gaskets.ts';
import type { ToolCount } from '../sequence/multi-tool.ts';
import type { PassPlan } from '../sequence/plans.ts';
import { ratedParts } from '../tools/rating.ts';
import { type Basis, basisOf } from './basis.ts';
import { checkBoltSet } from './bolt-set-view.ts';
import { breakoutOf, breakoutWorkings, checkBreakout } from './breakout.ts';
import { checkCertificates, checkCertifiedRange, gaugeOutsidePoints } from './check-certificates.ts';
import { checkCounterhold } from './check-counterhold.ts';
import { checkFit } from './check-fit.ts';
import { checkFurther } from './check-further.ts';
import { checkHandWrench } from './check-hand-wrench.ts';
import { checkHead } from './check-head.ts';
import { checkJoint } from './check-joint.ts';
import { checkLines } from './check-lines.ts';
import { checkFace, checkParts, checkRatings, checkRounding, checkScale } from './check-set.ts';
import { checkToolRoom } from './check-tool-room.ts';
import { type Dialled, type Hydraulics, hydraulicsOf } from './hydraulics.ts';
import { type CardInput, NO_SET } from './input.ts';
import { type StudStress, studStress } from './loads.ts';
import { plainTightening } from './plain-tightening.ts';
import { planOf } from './plan.ts';
import { checkReaction } from './reaction.ts';
import { checkFurtherTools, toolsOf } from './rules-section.ts';
import { NO_SECTIONS, type Sections, sectionsOf } from './sections.ts';
import { otherSets } from './set-shares.ts';
import { tightening } from './tightening.ts';
import { checkLoosening } from './without-pressure.ts';
import type { Work } from './work.ts';
import { dialWorking, torqueWorking } from './workings-pressure.ts';

/** A setting's numbers and everything that stands against it, without the texts that only a reader needs. */
export interface Assessment {
  /** The joint as the chosen bolt set sees it. */
  readonly input: CardInput;
  readonly basis: Basis;
  readonly hydraulics: Hydraulics;
  readonly work: Work;
  readonly stress: StudStress | null;
  /** Torque the dialled mark or the tool's setting gives, N·m. */
  readonly torque: number | null;
  readonly plan: PassPlan | null;
  readonly tools: ToolCount;
  readonly sections: Sections;
  readonly findings: readonly Raised[];
}

/**
 * What a setting comes to and what stands against it: dials, torques, loads, stresses, limits and all findings with
 * their words. It never throws on data; what is missing or wrong comes back as findings.
 *
 * Equation: T = K·F·D; p = (T − a)/b.
 * @param given joint, dates, plan, tool set and certificates, SI
 * @returns numbers and findings; the setting can be issued while no finding is a refusal
 * @example assess(input).work.dialled?.dial?.value // 260 bar
 * @source each working of the card names its own
 */
export function assess(given: CardInput): Assessment {
  const input = asSeenBySet(given);
  const own = withOtherSets(given, basisOf(input));
  const basis = input.method === 'tensioner' ? withoutFriction(own) : own;
  const hydraulics = hydraulicsOf(input);
  const work = workOf(input, basis, hydraulics);
  const stress = work.load === null ? null : studStress(basis, work.load);
  const torque = work.dialled?.torque ?? work.toolSetting?.torque ?? null;
  const plan = input.kind === 'tightening' ? planOf(input) : null;
  const tools = toolsOf(plan);
  const sections =
    input.kind === 'tightening' ? sectionsOf(input, basis, stress, torque ?? work.torque) : NO_SECTIONS;
  const findings = inOrder([
    ...dates(input),
    ...checkBoltSet(given),
    ...checkJoint(input, basis),
    ...(input.method === 'hydraulic wrench'
      ? checkSet(input, basis, hydraulics, work)
      : checkHandWrench(input)),
    ...work.findings,
    ...sections.findings,
    ...checkFurtherTools(input, tools),
  ]);
  return { input, basis, hydraulics, work, stress, torque, plan, tools, sections, findings };
}

/** The joint as the chosen bolt set sees it; without a pressure there is no hydraulic set to look at. */
function asSeenBySet(given: CardInput): CardInput {
  const data = jointOfSet(given.joint.data, given.boltSet);
  const set = given.method === 'hydraulic wrench' ? given.set : NO_SET;
  return data === null ? { ...given, set } : { ...given, set, joint: { ...given.joint, data } };
}

/** A further set sees the same gasket as the joint’s own bolting, with what the flange standard says of it. */
function withOtherSets(given: CardInput, basis: Basis): Basis {
  if (given.joint.data.boltSets.length === 0) return basis;
  return { ...basis, gaskets: jointGaskets(given.joint.data), others: otherSets(given) };
}

/** A stretched stud is neither turned nor twisted: friction has no part in its load and stress. */
function withoutFriction(basis: Basis): Basis {
  const friction = {
    nutFactor: null,
    missing: null,
    pair: null,
    bearingDiameter: null,
    scatter: null,
    assumed: false,
  };
  return { ...basis, friction };
}

function workOf(input: CardInput, basis: Basis, hydraulics: Hydraulics): Work {
  if (input.kind === 'breakout') return breakout(input, basis, hydraulics);
  return input.method === 'hydraulic wrench'
    ? tightening(input, basis, hydraulics)
    : plainTightening(input, basis);
}

/** Everything about the hydraulic set. */
function checkSet(input: CardInput, basis: Basis, hydraulics: Hydraulics, work: Work): Raised[] {
  const pressure = pressureOf(work.dialled);
  const { further } = input.set;
  // Each further wrench is held against the torque of its own line.
  const parts = further.length === 0 ? hydraulics.parts : ratedParts({ ...input.set, further: [] });
  return [
    ...checkParts(input),
    ...checkToolRoom(input),
    ...checkLines(input),
    ...checkCertificates(input, hydraulics),
    ...checkFit(input, basis, work.torque),
    ...checkHead(input, basis),
    ...checkCounterhold(input, basis),
    ...checkReaction(input),
    ...checkRatings(input, parts, work.dialled?.torque ?? work.torque, pressure),
    ...checkScale(input, hydraulics, pressure),
    ...checkFace(input),
    ...checkRounding(input, work.torque, work.dialled),
    ...checkFurther(input, basis, hydraulics, truePressure(work.dialled), work.pressures),
  ];
}

function breakout(input: CardInput, basis: Basis, hydraulics: Hydraulics): Work {
  const found = input.method === 'tensioner' ? null : breakoutOf(input, basis, hydraulics);
  const start = found?.start ?? null;
  const pressures =
    start === null
      ? []
      : [{ name: 'First pressure', pressure: start.pressure ?? start.wanted, final: false }];
  return {
    planName: 'Breakout in stages',
    torque: found?.startTorque ?? null,
    dialled: start,
    toolSetting: null,
    load: found?.load ?? null,
    loadName: 'installed load, taken as still there',
    passes: found?.passes ?? [],
    pressures,
    breakout: found?.view ?? null,
    findings: [
      ...checkLoosening(input),
      ...(input.method === 'tensioner' ? [] : checkBreakout(input, basis, found)),
      ...checkCertifiedRange(input, hydraulics, pressures),
      ...(start !== null && !start.corrected ? gaugeOutsidePoints(input, start.wanted) : []),
    ],
    workings: () => [
      ...(found === null ? [] : breakoutWorkings(input, basis, found)),
      ...(start === null || found === null
        ? []
        : [
            dialWorking(input, hydraulics, found.startTorque, start),
            torqueWorking(input, hydraulics, start),
          ]),
    ],
  };
}

function dates({ joint, startsOn, endsOn }: CardInput): Raised[] {
  if (endsOn >= startsOn) return [];
  return [
    raise('job_ends_before_start', () => ({ startsOn, endsOn }), {
      severity: 'refusal',
      subject: joint.data.tag,
      place: atSettings('endsOn'),
      source: 'the dates as entered',
      value: endsOn,
      limit: startsOn,
    }),
  ];
}

function truePressure(dialled: Dialled | null): number | null {
  return dialled?.pressure ?? dialled?.wanted ?? null;
}

/** Pressure that counts against ratings and scale: what is dialled, or what would have to be. */
function pressureOf(dialled: Dialled | null): number | null {
  return dialled?.dial?.pressure ?? dialled?.wanted ?? null;
}
