import type { BoltOrder, SettingCard, Working } from '../contract/setting.ts';
import type { Finding } from '../findings/finding.ts';
import { inOrder } from '../findings/order.ts';
import { atSettings, raise } from '../findings/raise.ts';
import { jointOfSet } from '../joint/bolt-set.ts';
import { starOrder } from '../sequence/star.ts';
import { cautionsFor } from '../text/cautions.ts';
import { DEFERRAL } from '../text/deferral.ts';
import { describeBolting, describeFlange } from '../text/describe.ts';
import { CORE_VERSION } from '../version.ts';
import { type Basis, basisOf } from './basis.ts';
import { boltSetView, checkBoltSet } from './bolt-set-view.ts';
import { breakoutOf, breakoutWorkings, checkBreakout } from './breakout.ts';
import { checkCertificates, checkCertifiedRange, gaugeOutsidePoints } from './check-certificates.ts';
import { checkFit } from './check-fit.ts';
import { checkJoint } from './check-joint.ts';
import { checkParts, checkRatings, checkRounding, checkScale } from './check-set.ts';
import { capacityOf, type Dialled, type Hydraulics, hydraulicsOf } from './hydraulics.ts';
import type { CardInput } from './input.ts';
import { studStress } from './loads.ts';
import { plainTightening } from './plain-tightening.ts';
import { planOf } from './plan.ts';
import { checkFurtherTools, planRules, toolOrderOf, toolsOf } from './rules-section.ts';
import { NO_SECTIONS, sectionsOf } from './sections.ts';
import { setView } from './set-view.ts';
import { tightening } from './tightening.ts';
import { uncertaintyOf } from './uncertainty-section.ts';
import type { Work } from './work.ts';
import { stressWorkings } from './workings-load.ts';
import { capacityWorking, dialWorking, geometryWorkings, torqueWorking } from './workings-pressure.ts';

/**
 * The setting card: what to dial, what it gives, in which order, and everything that stands against it. It never
 * throws on data; what is missing or wrong comes back as findings.
 *
 * Equation: T = K·F·D; p = (T − a)/b; each number's own relation stands in `workings`.
 * @param input joint, dates, plan, tool set and certificates, SI
 * @returns the card; `issuable` is false while a refusal stands
 * @example settingCard(input).dial // { value: 260, unit: 'bar', pressure: 26000000 }
 * @source each working names its own
 */
export function settingCard(given: CardInput): SettingCard {
  const input = asSeenBySet(given);
  const basis = basisOf(input);
  const hydraulics = hydraulicsOf(input);
  const work = workOf(input, basis, hydraulics);
  const { data } = input.joint;
  const stress = work.load === null ? null : studStress(basis, work.load);
  const torque = work.dialled?.torque ?? work.toolSetting?.torque ?? null;
  const capacity = capacityOf(hydraulics);
  const plan = input.kind === 'tightening' ? planOf(input) : null;
  const tools = toolsOf(plan);
  const sections =
    input.kind === 'tightening' ? sectionsOf(input, basis, stress, torque ?? work.torque) : NO_SECTIONS;
  const uncertainty = uncertaintyOf(input, hydraulics, basis, work, sections.views.limits);
  const findings = inOrder([
    ...dates(input),
    ...checkBoltSet(given),
    ...checkJoint(input, basis),
    ...(input.method === 'hydraulic wrench' ? checkSet(input, basis, hydraulics, work) : []),
    ...work.findings,
    ...sections.findings,
    ...checkFurtherTools(input, tools),
  ]);
  const workings = [
    ...work.workings,
    ...(stress === null ? [] : stressWorkings(input, basis, stress, torque, work.loadName)),
    capacityWorking(input, hydraulics, capacity),
    ...uncertainty.workings,
    ...geometryWorkings(input, basis),
    ...sections.workings,
  ].filter((working): working is Working => working !== null);
  return {
    coreVersion: CORE_VERSION,
    kind: input.kind,
    startsOn: input.startsOn,
    endsOn: input.endsOn,
    jointId: input.joint.id,
    jointVersion: input.joint.version,
    tag: data.tag,
    location: data.location,
    service: data.service,
    description: description(input, basis),
    boltCount: basis.joint.boltCount,
    planName: work.planName,
    method: input.method,
    boltSet: boltSetView(given),
    toolSetting: work.toolSetting,
    gauge: gaugeView(input, hydraulics),
    dial: work.dialled?.dial ?? null,
    targetTorque: input.method === 'tensioner' ? null : basis.targetTorque,
    targetLoad: basis.targetLoad,
    torque,
    load: work.load,
    stressTensile: stress?.tensile ?? null,
    stressRoot: stress?.root ?? null,
    axialOfYield: stress?.axialOfYield ?? null,
    combinedOfYield: stress?.combinedElasticOfYield ?? null,
    combinedPlasticOfYield: stress?.combinedPlasticOfYield ?? null,
    ...sections.views,
    toolOrder: toolOrderOf(basis, tools),
    rules: planRules(input, plan),
    assumed: basis.friction.assumed || work.breakout?.installedOrigin === 'assumed',
    passes: [...work.passes],
    order: orderOf(basis),
    set: setView(hydraulics.parts),
    capacity: capacity?.torque ?? null,
    breakout: work.breakout,
    uncertainty: uncertainty.view,
    findings,
    workings,
    cautions: cautionsFor(input.kind),
    deferral: DEFERRAL,
    issuable: findings.every((finding) => finding.severity !== 'refusal'),
  };
}

/** The joint as the chosen bolt set sees it; without a pressure there is no hydraulic set to look at. */
function asSeenBySet(given: CardInput): CardInput {
  const data = jointOfSet(given.joint.data, given.boltSet);
  const set = given.method === 'hydraulic wrench' ? given.set : NO_SET;
  return data === null ? { ...given, set } : { ...given, set, joint: { ...given.joint, data } };
}

const NO_SET: CardInput['set'] = {
  drive: null,
  cassette: null,
  reducers: [],
  pump: null,
  gauge: null,
  hoses: [],
};

function workOf(input: CardInput, basis: Basis, hydraulics: Hydraulics): Work {
  if (input.kind === 'breakout') return breakout(input, basis, hydraulics);
  return input.method === 'hydraulic wrench'
    ? tightening(input, basis, hydraulics)
    : plainTightening(input, basis);
}

/** Everything about the hydraulic set. */
function checkSet(input: CardInput, basis: Basis, hydraulics: Hydraulics, work: Work): Finding[] {
  const pressure = pressureOf(work.dialled);
  return [
    ...checkParts(input),
    ...checkCertificates(input, hydraulics),
    ...checkFit(input, basis, work.torque),
    ...checkRatings(input, hydraulics, work.dialled?.torque ?? work.torque, pressure),
    ...checkScale(input, hydraulics, pressure),
    ...checkRounding(input, work.torque, work.dialled),
  ];
}

function breakout(input: CardInput, basis: Basis, hydraulics: Hydraulics): Work {
  const found = breakoutOf(input, basis, hydraulics);
  const start = found?.start ?? null;
  return {
    planName: 'Breakout in stages',
    torque: found?.startTorque ?? null,
    dialled: start,
    toolSetting: null,
    load: found?.load ?? null,
    loadName: 'installed load, taken as still there',
    passes: found?.passes ?? [],
    breakout: found?.view ?? null,
    findings: [
      ...checkBreakout(input, basis, found),
      ...checkCertifiedRange(
        input,
        hydraulics,
        start === null
          ? []
          : [{ name: 'First pressure', pressure: start.pressure ?? start.wanted, final: false }],
      ),
      ...(start !== null && !start.corrected ? gaugeOutsidePoints(input, start.wanted) : []),
    ],
    workings: [
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

function dates({ joint, startsOn, endsOn }: CardInput): Finding[] {
  if (endsOn >= startsOn) return [];
  return [
    raise(
      'job_ends_before_start',
      { startsOn, endsOn },
      {
        severity: 'refusal',
        subject: joint.data.tag,
        place: atSettings('endsOn'),
        source: 'the dates as entered',
        value: endsOn,
        limit: startsOn,
      },
    ),
  ];
}

/** Pressure that counts against ratings and scale: what is dialled, or what would have to be. */
function pressureOf(dialled: Dialled | null): number | null {
  return dialled?.dial?.pressure ?? dialled?.wanted ?? null;
}

function orderOf({ joint }: Basis): BoltOrder | null {
  return joint.boltCount === null ? null : starOrder(joint.boltCount);
}

function gaugeView({ set }: CardInput, { scale }: Hydraulics): SettingCard['gauge'] {
  if (set.gauge === null || scale === null) return null;
  return { toolId: set.gauge.id, number: set.gauge.data.number, unit: scale.unit };
}

/** "NPS 8 Class 300 · 12 × 7/8-9 UNC · ASTM A193 B7 · spiral wound · nickel-based anti-seize" */
function description({ joint: { data } }: CardInput, { joint }: Basis): string {
  const bolting = describeBolting({
    count: joint.boltCount,
    thread: joint.thread?.value.designation ?? data.bolting.thread,
  });
  return [describeFlange(data.flange), bolting, data.bolting.grade, data.gasket?.type, data.lubricant?.name]
    .filter((text): text is string => typeof text === 'string' && text !== '')
    .join(' · ');
}
