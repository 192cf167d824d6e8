import type { RetighteningAnswerView } from '../../../core/contract/retightening.ts';
import { identityOf } from '../../../core/joint/identity.ts';
import { resolveJoint } from '../../../core/joint/resolve.ts';
import {
  COMMON_WINDOW,
  type LiveTighteningFacts,
  liveTighteningReasons,
  retighteningReasons,
} from '../../../core/joint/retightening.ts';
import { showQuantity } from '../../../core/text/number.ts';
import { retighteningCautions } from '../../../core/text/retightening-cautions.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { ReadContext } from '../context.ts';
import { notFound } from '../failure.ts';
import { stepFacts } from '../life/facts.ts';
import { standingOf } from '../life/standing.ts';
import { lastTightening } from '../repositories/chart.ts';
import { findJoint, type JointOnRegister } from '../repositories/joint.ts';
import { siteTablesFor } from '../repositories/site-tables.ts';
import type { Read } from './handler.ts';

/** What stands against turning the nuts of a joint again now; an empty list of reasons is no permit. */
export const checkRetightening: Read<'joint.retightening'> = async (context, input) => {
  const joint = await findJoint(context.db, input.jointId);
  if (joint === null) throw notFound('joint', 'jointId', input.jointId);
  const known = await knownOf(context, joint);
  const { lastFullPass, retightening } = known;
  const facts = factsOf(known);
  const told = { kind: input.kind, facts, lastFullPass, cautions: [...retighteningCautions(input.kind)] };
  if (input.kind === 'in service, under pressure') {
    const { reasons, deferral } = liveTighteningReasons(liveFacts(joint, known, input));
    return { ...told, reasons: [...reasons], window: null, deferral };
  }
  const { reasons, window, deferral } = retighteningReasons({
    ...retightening,
    kind: input.kind === 'after the dwell' ? 'ambient, after a dwell' : 'start-up, while warming',
    boltMetalTemperature: input.boltTemperature?.si ?? null,
    sinceFullPass:
      lastFullPass === null ? null : (context.clock().getTime() - Date.parse(lastFullPass)) / 1000,
  });
  return { ...told, reasons: [...reasons], window, deferral };
};

type Known = Awaited<ReturnType<typeof knownOf>>;

async function knownOf({ db, site }: ReadContext, joint: JointOnRegister) {
  const standing = await standingOf(db, joint.id);
  const { retightening } = await stepFacts({ db, site, actor: null }, joint, standing, null);
  const last = await lastTightening(db, joint.id, 0, null);
  const boltCount = resolveJoint(joint.data, await siteTablesFor(db, joint.data)).boltCount;
  return {
    retightening,
    boltCount,
    /** Newest of the tightenings, whatever is known of their torque. */
    lastFullPass: await newestTightening(db, joint.id),
    load: last === null ? null : await loadOf(db, last.eventId),
  };
}

async function newestTightening(db: ReadContext['db'], jointId: string): Promise<string | null> {
  const row = await db
    .selectFrom('tightening')
    .select('happened_at as at')
    .where('joint_id', '=', jointId)
    .orderBy('happened_at_utc', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row?.at ?? null;
}

/** Load of one bolt by the record itself, or by the setting it followed. */
async function loadOf(
  db: ReadContext['db'],
  eventId: string,
): Promise<{ readonly load: number; readonly source: string } | null> {
  const row = await db
    .selectFrom('tightening')
    .innerJoin('event', 'event.id', 'tightening.id')
    .leftJoin('event as issue', 'issue.id', 'tightening.setting_id')
    .select(['event.body', 'issue.body as issued'])
    .where('tightening.id', '=', eventId)
    .executeTakeFirstOrThrow();
  const { data } = (JSON.parse(row.body) as EventBody).data as EventDataByKind['tightening recorded'];
  if (data.load !== null && data.load !== undefined) {
    return { load: data.load.si, source: 'residual load of the tensioning record' };
  }
  if (row.issued === null) return null;
  const { card, number } = (JSON.parse(row.issued) as EventBody).data as EventDataByKind['setting issued'];
  return card.targetLoad === null
    ? null
    : { load: card.targetLoad, source: `computed from the torque of setting ${number}, not measured` };
}

function factsOf({ retightening, lastFullPass, load }: Known): RetighteningAnswerView['facts'] {
  const { gasketType, excludedGaskets, lastTorque, siteProcedure, window } = retightening;
  const { from, to, source } = window ?? COMMON_WINDOW;
  return [
    { name: 'Last full pass', shown: lastFullPass, source: 'newest tightening of the joint' },
    {
      name: 'Its torque',
      shown: lastTorque === null ? null : showQuantity(lastTorque, 'N.m', 3),
      source: 'newest tightening of the joint',
    },
    {
      name: 'Load of one bolt',
      shown: load === null ? null : showQuantity(load.load, 'kN', 3),
      source: load?.source ?? 'no record of it',
    },
    {
      name: 'Window of start-up',
      shown: `${showQuantity(from, 'degC')} to ${showQuantity(to, 'degC')}`,
      source,
    },
    { name: 'Gasket', shown: gasketType, source: 'joint data' },
    {
      name: 'Gasket excluded by the site',
      shown: excludedGaskets === null ? null : excludedGaskets.length > 0 ? 'yes' : 'no',
      source: 'joint data',
    },
    { name: 'Procedure of the site', shown: siteProcedure, source: 'joint data' },
  ];
}

/** Joints of these types have their own rules, whatever anybody answers. */
const APART = ['clamp connector', 'compact flange'];

const yes = (said: 'yes' | 'no' | 'not known') => (said === 'not known' ? null : said === 'yes');

function liveFacts(
  { data }: JointOnRegister,
  { retightening, boltCount, load }: Known,
  { bellowsOrClamp, boltsSound, pressureReduced }: Parameters<typeof checkRetightening>[1],
): LiveTighteningFacts {
  const type = identityOf(data).type;
  return {
    boltCount,
    boltLoadRecorded: load !== null,
    standardFlange: data.flange.kind === 'standard',
    bellowsOrClamp: type !== null && APART.includes(type) ? true : yes(bellowsOrClamp),
    boltsSound: yes(boltsSound),
    pressureReduced: yes(pressureReduced),
    siteProcedure: retightening.siteProcedure,
  };
}
