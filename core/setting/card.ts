import type { BoltOrder, SettingCard, Working } from '../contract/setting.ts';
import { worded } from '../findings/raise.ts';
import { starOrder } from '../sequence/star.ts';
import { cautionsFor } from '../text/cautions.ts';
import { DEFERRAL } from '../text/deferral.ts';
import { describeBolting, describeFlange } from '../text/describe.ts';
import { CORE_VERSION } from '../version.ts';
import { assess } from './assessment.ts';
import type { Basis } from './basis.ts';
import { boltSetView } from './bolt-set-view.ts';
import { capacityOf, type Hydraulics } from './hydraulics.ts';
import type { CardInput } from './input.ts';
import { reactionView, reactionWorking } from './reaction.ts';
import { planRules, toolOrderOf } from './rules-section.ts';
import { setView } from './set-view.ts';
import { uncertaintyOf } from './uncertainty-section.ts';
import { stressWorkings } from './workings-load.ts';
import { capacityWorking, geometryWorkings } from './workings-pressure.ts';

/**
 * The setting card: what to dial, what it gives, in which order, and everything that stands against it. It never throws
 * on data; what is missing or wrong comes back as findings.
 *
 * Equation: T = K·F·D; p = (T − a)/b; each number's own relation stands in `workings`.
 * @param given joint, dates, plan, tool set and certificates, SI
 * @returns the card; `issuable` is false while a refusal stands
 * @example settingCard(input).dial?.value // 260 bar
 * @source each working names its own
 */
export function settingCard(given: CardInput): SettingCard {
  const { input, basis, hydraulics, work, stress, torque, plan, tools, sections, findings } = assess(given);
  const { data } = input.joint;
  const capacity = capacityOf(hydraulics);
  const views = sections.view();
  const reaction = reactionView(input, work);
  const uncertainty = uncertaintyOf(input, hydraulics, basis, work, views.limits);
  const workings = [
    ...work.workings(),
    ...(stress === null ? [] : stressWorkings(input, basis, stress, torque, work.loadName)),
    capacityWorking(input, hydraulics, capacity),
    reactionWorking(input, reaction),
    ...uncertainty.workings,
    ...geometryWorkings(input, basis),
    ...sections.workings(),
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
    ...views,
    toolOrder: toolOrderOf(basis, tools),
    rules: planRules(input, plan),
    assumed: basis.friction.assumed || work.breakout?.installedOrigin === 'assumed',
    passes: [...work.passes],
    order: orderOf(basis),
    set: setView(hydraulics.parts),
    capacity: capacity?.torque ?? null,
    reaction,
    breakout: work.breakout,
    uncertainty: uncertainty.view,
    findings: findings.map(worded),
    workings,
    cautions: cautionsFor(input.kind),
    deferral: DEFERRAL,
    issuable: findings.every((finding) => finding.severity !== 'refusal'),
  };
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
