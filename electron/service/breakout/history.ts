import type { Kysely } from 'kysely';
import { COMMON_RATIO } from '../../../core/breakout/allowance.ts';
import { jointExpectation } from '../../../core/breakout/forecast.ts';
import { type LikeOpenings, type LooseningFacts, openingView } from '../../../core/breakout/opening-view.ts';
import type { OpeningClass } from '../../../core/breakout/plant.ts';
import { openingKey, type RecordedOpening } from '../../../core/breakout/recorded.ts';
import { thinOpenings } from '../../../core/breakout/thin-openings.ts';
import { historyFinding } from '../../../core/breakout/words.ts';
import { expectedProbability, expectedQuantile } from '../../../core/breakout/worst.ts';
import type { BreakoutHistory } from '../../../core/contract/forecast.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import { capacityOf, hydraulicsOf } from '../../../core/setting/hydraulics.ts';
import { NO_SET } from '../../../core/setting/input.ts';
import { plainName } from '../../../core/text/same-name.ts';
import type { Site } from '../context.ts';
import { notFound } from '../failure.ts';
import { chunks } from '../register/insert.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { toolsWithCertificates } from '../repositories/tool.ts';
import { dateAtSite } from '../time.ts';
import { allSiteTables, type JointRow, jointsById, looseningFacts, setBasis } from './joints.ts';
import { plantKnowledge, traitsAt } from './plant.ts';

type Db = Kysely<RegisterSchema>;

/** Columns of the drawing; two openings each at most, beside those that always stay. */
const WIDTH = 300;

/** What was opened, with what each opening says; the drawing's openings, and how many there are in all. */
export async function breakoutHistoryOf(
  { db, site }: { readonly db: Db; readonly site: Site },
  { of }: ParsedInput<'breakout.history'>,
): Promise<BreakoutHistory> {
  const { openings, plant, joints } = await plantKnowledge(db);
  const wanted = of.kind === 'joint' ? await ofJoint(db, openings, of) : ofClass(openings, joints, of);
  const tables = await allSiteTables(db);
  const facts = new Map<string, LooseningFacts>();
  const likes = new Map<OpeningClass, LikeOpenings>();
  const views = wanted
    .toSorted((a, b) => Date.parse(a.happenedAt) - Date.parse(b.happenedAt))
    .flatMap((opening) => {
      const joint = joints.get(opening.jointId);
      if (joint === undefined) return [];
      const key = openingKey(opening.jointId, opening.boltSet);
      const own = facts.get(key) ?? looseningFacts(setBasis(joint.id, joint.data, opening.boltSet, tables));
      facts.set(key, own);
      const traits = traitsAt(opening, joint);
      // Of the class, not of the joint: that the joint always comes off hard is what is to be seen.
      const { of: like, expected, evidence } = jointExpectation(plant, '', traits);
      const told = likes.get(like) ?? likeOf(expected, evidence.sufficiency, own);
      likes.set(like, told);
      return [openingView(opening, joint.tag, traits, own, told)];
    });
  const shown = thinOpenings(views, WIDTH);
  return {
    finding: historyFinding(views),
    openings: shown,
    shown: shown.length,
    total: views.length,
    commonRatio: COMMON_RATIO,
    capacity: await leastCapacity(
      db,
      site,
      wanted.map(({ eventId, happenedAt }) => ({ eventId, happenedAt })),
    ),
  };
}

function likeOf(
  expected: ReturnType<typeof jointExpectation>['expected'],
  sufficiency: string,
  { clean }: LooseningFacts,
): LikeOpenings {
  const one = expectedProbability(expected, { kind: 'one bolt' });
  const enough = sufficiency === 'enough';
  const middle = expectedProbability(expected, { kind: 'middle' });
  return {
    highRatio: enough
      ? Math.exp(expectedQuantile(one, expected, 0.95))
      : Math.max(COMMON_RATIO, clean ?? COMMON_RATIO),
    highBasis: enough ? 'what 95 of 100 bolts of the like stay under' : 'common practice, up to 2.5 times',
    middleAtMost: enough ? (ratio) => (ratio > 0 ? middle(Math.log(ratio)) : 0) : null,
  };
}

type JointScope = Extract<ParsedInput<'breakout.history'>['of'], { kind: 'joint' }>;
type ClassScope = Extract<ParsedInput<'breakout.history'>['of'], { kind: 'class' }>;

async function ofJoint(
  db: Db,
  openings: readonly RecordedOpening[],
  { jointId, boltSet }: JointScope,
): Promise<readonly RecordedOpening[]> {
  if ((await jointsById(db, [jointId])).size === 0) throw notFound('joint', 'of.jointId', jointId);
  return openings.filter((opening) => opening.jointId === jointId && opening.boltSet === boltSet);
}

function ofClass(
  openings: readonly RecordedOpening[],
  joints: ReadonlyMap<string, JointRow>,
  { service, band, lubricant, batch, studUses }: ClassScope,
): RecordedOpening[] {
  const same = (asked: string | null, own: string | null) =>
    asked === null || plainName(asked) === plainName(own ?? '');
  return openings.filter((opening) => {
    const joint = joints.get(opening.jointId);
    if (joint === undefined) return false;
    const traits = traitsAt(opening, joint);
    return (
      same(service, traits.service) &&
      (band === null || traits.band === band) &&
      same(lubricant, traits.lubricant) &&
      same(batch, opening.batch) &&
      (studUses === null || opening.studUses === studUses)
    );
  });
}

/** Least torque that the wrenches of these openings could give on their days, by drive unit and its certificate. */
async function leastCapacity(
  db: Db,
  site: Site,
  events: readonly { readonly eventId: string; readonly happenedAt: string }[],
): Promise<number | null> {
  const days = new Map(
    events.map(({ eventId, happenedAt }) => [eventId, dateAtSite(happenedAt, site.timeZone)]),
  );
  const uses: { eventId: string; toolId: string }[] = [];
  for (const part of chunks([...days.keys()])) {
    uses.push(
      ...(await db
        .selectFrom('event_tool')
        .select(['event_id as eventId', 'tool_id as toolId'])
        .where('event_id', 'in', part)
        .where('role', '=', 'drive unit')
        .execute()),
    );
  }
  const drives = await toolsWithCertificates(db, { ids: [...new Set(uses.map(({ toolId }) => toolId))] });
  const byId = new Map(drives.map((tool) => [tool.id, tool]));
  let least: number | null = null;
  const known = new Map<string, number | null>();
  for (const { eventId, toolId } of uses) {
    const day = days.get(eventId) ?? '';
    const key = `${toolId} ${day}`;
    if (!known.has(key)) known.set(key, capacityOn(byId.get(toolId), day));
    const capacity = known.get(key) ?? null;
    if (capacity !== null && (least === null || capacity < least)) least = capacity;
  }
  return least;
}

export function capacityOn(
  tool: Awaited<ReturnType<typeof toolsWithCertificates>>[number] | undefined,
  day: string,
) {
  if (tool === undefined || tool.data.properties.class !== 'drive unit') return null;
  const drive = { ...tool, data: { ...tool.data, properties: tool.data.properties } };
  return capacityOf(hydraulicsOf({ set: { ...NO_SET, drive }, startsOn: day }))?.torque ?? null;
}
