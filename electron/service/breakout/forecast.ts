import type { Kysely } from 'kysely';
import { COMMON_RATIO, seizedStudCeiling } from '../../../core/breakout/allowance.ts';
import { jointExpectation, type RatioForecast, ratioForecast } from '../../../core/breakout/forecast.ts';
import { openingKey, yearsBetween } from '../../../core/breakout/recorded.ts';
import { seizedStuds } from '../../../core/breakout/seized.ts';
import { smallestSet } from '../../../core/breakout/smallest-set.ts';
import { evidenceWords, forecastFinding } from '../../../core/breakout/words.ts';
import type { Forecast, Spread } from '../../../core/contract/forecast.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import type { ToolSetData } from '../../../core/contract/setting.ts';
import { loadOf } from '../../../core/setting/basis.ts';
import { capacityOf, hydraulicsOf } from '../../../core/setting/hydraulics.ts';
import type { Site } from '../context.ts';
import { invalidField, notFound } from '../failure.ts';
import { gatherCandidates } from '../operations/card-input.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { siteTablesFor } from '../repositories/site-tables.ts';
import { startOfDay, todayAt } from '../time.ts';
import { jointsById, looseningFacts, type SetBasis, setBasis, traitsOf } from './joints.ts';
import { plantKnowledge } from './plant.ts';

type Db = Kysely<RegisterSchema>;
interface Place {
  readonly db: Db;
  readonly site: Site;
  readonly clock: () => Date;
}

/** Breakout of the next opening of one bolt set. */
export async function forecastOf(place: Place, input: ParsedInput<'breakout.forecast'>): Promise<Forecast> {
  const { db, site } = place;
  const { jointId, boltSet } = input;
  const joint = (await jointsById(db, [jointId])).get(jointId);
  if (joint === undefined) throw notFound('joint', 'jointId', jointId);
  const set = setBasis(jointId, joint.data, boltSet, await siteTablesFor(db, joint.data));
  if (set === null) {
    throw invalidField(
      'boltSet',
      String(boltSet),
      `a bolt set of ${joint.tag}; it has ${joint.data.boltSets.length} beside its own`,
    );
  }
  const on = input.on ?? todayAt(place);
  const { plant, installed: standing } = await plantKnowledge(db);
  const key = openingKey(jointId, boltSet);
  const work = standing.get(key) ?? null;
  const years = work === null ? null : yearsBetween(work.happenedAt, startOfDay(on, site.timeZone));
  const traits = traitsOf(joint.data, boltSet, null, years);
  const { of, expected, evidence } = jointExpectation(plant, key, traits);
  const bolts = set.basis.joint.boltCount;
  const ratio = bolts === null ? null : ratioForecast(expected, bolts);
  const installed = installedOf(set, work);
  const torque = installed?.torque ?? null;
  const className = of.rule.words(traits);
  const ceiling = torque === null ? null : ceilingOf(set, torque);
  const tools = await toolsFor(
    place,
    input,
    on,
    torque === null || ratio === null ? null : torque * ratio.worstBolt.high,
  );
  const missing = [
    ...(bolts === null ? ['number of bolts'] : []),
    ...(installed === null ? ['installed torque'] : []),
    ...(ceiling === null && torque !== null ? ['stud ceiling: thread, yield strength, nut or friction'] : []),
  ];
  const above = (limit: number | null) =>
    limit === null || ratio === null || torque === null ? null : ratio.worstAbove(limit / torque);
  const shown = ratio === null ? null : ratiosOf(ratio);
  const torques = shown === null || torque === null ? null : timesTorque(shown, torque);
  const seized = bolts === null ? null : seizedStuds(of.seized, bolts);
  const forecast = {
    jointId,
    tag: joint.tag,
    boltSet: boltSet === 0 ? null : (joint.data.boltSets[boltSet - 1]?.name ?? null),
    boltCount: bolts,
    on,
    evidence: {
      ...evidence,
      words: evidenceWords(evidence, className),
      className,
      prior: of.prior.basis,
    },
    ratio: shown,
    torque: torques,
    installed,
    boltDeviation: evidence.sufficiency === 'too few to say' ? null : of.scatter.deviation,
    correlation: evidence.sufficiency === 'too few to say' ? null : of.scatter.correlation,
    cleanRatio: looseningFacts(set).clean,
    commonRatio: COMMON_RATIO,
    wrench: tools.wrench === null ? null : { ...tools.wrench, tooSmall: above(tools.wrench.capacity) },
    smallestSet: tools.smallest.set,
    smallestSetWhy: tools.smallest.why,
    seized:
      seized === null
        ? null
        : {
            expected: seized.expected,
            low: seized.low,
            high: seized.high,
            basis: `${Math.round(seized.share * seized.studs)} of ${seized.studs} studs of ${seized.openings} openings: ${className}`,
          },
    ceiling: ceiling === null ? null : { ...ceiling, beyond: above(ceiling.elastic) },
    missing,
    curve: ratio === null ? [] : curveOf(ratio),
  };
  return { ...forecast, finding: forecastFinding(forecast), advice: adviceOf(forecast) };
}

export function installedOf(
  { basis }: SetBasis,
  work: { readonly torque: number | null; readonly happenedAt: string } | null,
): Forecast['installed'] {
  if (work !== null && work.torque !== null && work.torque > 0) {
    const source = `tightening recorded for ${work.happenedAt.slice(0, 10)}`;
    return { torque: work.torque, happenedAt: work.happenedAt, source };
  }
  if (work !== null || basis.targetTorque === null || basis.targetTorque <= 0) return null;
  return {
    torque: basis.targetTorque,
    happenedAt: null,
    source: 'assumed: target torque of the joint’s data; no tightening stands on record',
  };
}

/** Torque at which a stud seized in its thread yields, with the load the torque gave. */
export function ceilingOf({ basis }: SetBasis, torque: number): { elastic: number; plastic: number } | null {
  const { joint, friction } = basis;
  const thread = joint.thread?.value;
  const yieldStrength = joint.yieldStrength?.value;
  const load = loadOf(basis, torque);
  if (thread === undefined || yieldStrength === undefined || load === null) return null;
  if (friction.pair === null || friction.bearingDiameter === null) return null;
  const { bearing } = friction.pair;
  const { bearingDiameter } = friction;
  const at = (model: 'elastic' | 'plastic') =>
    seizedStudCeiling(thread, yieldStrength, load, bearing, bearingDiameter, model);
  return { elastic: at('elastic'), plastic: at('plastic') };
}

const NO_TOOLS: ToolSetData = {
  driveId: null,
  cassetteId: null,
  reducerIds: [],
  hoseIds: [],
  pumpId: null,
  gaugeId: null,
  couplerIds: [],
  counterholdId: null,
  further: [],
};

async function toolsFor(
  { db }: Place,
  { jointId, boltSet, tools }: ParsedInput<'breakout.forecast'>,
  on: string,
  needed: number | null,
) {
  const { input, candidates } = await gatherCandidates(db, {
    jointId,
    kind: 'breakout',
    startsOn: on,
    endsOn: on,
    tools: tools ?? NO_TOOLS,
    planId: '',
    boltSet,
    method: 'hydraulic wrench',
    torqueTool: null,
    withUncertainty: false,
  });
  const capacity = tools === null ? null : capacityOf(hydraulicsOf(input));
  const set = setBasis(jointId, input.joint.data, boltSet, input.site);
  const nut = set?.basis.joint.nut?.value.acrossFlats ?? null;
  return {
    wrench: capacity === null ? null : { capacity: capacity.torque, governs: capacity.governs },
    smallest:
      needed === null
        ? { set: null, why: 'The torque that is needed is not known.' }
        : smallestSet(candidates, needed, nut, on),
  };
}

function ratiosOf({ oneBolt, worstBolt, middle }: RatioForecast) {
  return { oneBolt, worstBolt, middle };
}

function timesTorque(ratio: NonNullable<Forecast['ratio']>, torque: number): NonNullable<Forecast['torque']> {
  const times = ({ low, median, high }: Spread) => ({
    low: low * torque,
    median: median * torque,
    high: high * torque,
  });
  return { oneBolt: times(ratio.oneBolt), worstBolt: times(ratio.worstBolt), middle: times(ratio.middle) };
}

const CURVE_POINTS = 48;

function curveOf(ratio: RatioForecast): Forecast['curve'] {
  const from = Math.log(ratio.oneBolt.low / 1.3);
  const to = Math.log(ratio.worstBolt.high * 1.4);
  return Array.from({ length: CURVE_POINTS }, (_, index) => {
    const at = Math.exp(from + ((to - from) * index) / (CURVE_POINTS - 1));
    return { ratio: at, oneBolt: ratio.oneAtMost(at), worstBolt: ratio.worstAtMost(at) };
  });
}

/** Chances above which another tool or another method is prepared. */
const PREPARE = 0.05;

function adviceOf({ ceiling, wrench, seized, torque }: Omit<Forecast, 'finding' | 'advice'>): string[] {
  const advice: string[] = [];
  if (ceiling !== null && torque !== null && torque.worstBolt.high > ceiling.elastic) {
    advice.push(
      'The 95 % torque of the worst bolt is beyond what a seized stud stands in tension and twist together: plan another method for it by the site’s procedure, such as splitting or cutting the nut, or heat under permit. Never go on above the ceiling.',
    );
  }
  if (wrench?.tooSmall != null && wrench.tooSmall > PREPARE) {
    advice.push('This wrench may be too small: have a larger set ready before the joint is opened.');
  }
  if (seized !== null && seized.high >= 1) {
    advice.push('Studs may have to be cut: have spare studs and nuts and the means to cut ready.');
  }
  advice.push(
    'Expect sudden release. The tool’s own instructions, the site’s procedure and the competent person come before these numbers.',
  );
  return advice;
}
