import type { Kysely } from 'kysely';
import { lineOfCertificate } from '../../../core/calibration/certificate.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import type { CertificateLineView } from '../../../core/contract/tool.ts';
import { jointOfSet } from '../../../core/joint/bolt-set.ts';
import type { AffectedUse } from '../../../core/recall/affected.ts';
import { basisOf as jointBasis } from '../../../core/setting/basis.ts';
import { hydraulicsOf } from '../../../core/setting/hydraulics.ts';
import type { CardInput, ToolOnRegister } from '../../../core/setting/input.ts';
import type { EventBody, EventDataByKind } from '../chain/events.ts';
import type { Site } from '../context.ts';
import { chunks } from '../register/insert.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { siteTablesFor } from '../repositories/site-tables.ts';
import { toolsWithCertificates } from '../repositories/tool.ts';
import { dateAtSite } from '../time.ts';
import type { FailingBasis } from './basis.ts';
import { sourceOf, type Wrench } from './source.ts';
import type { AnyTool, Subject } from './subject.ts';
import { bodiesOf, type UseRow } from './uses.ts';

type Db = Kysely<RegisterSchema>;
type Tightening = EventDataByKind['tightening recorded'];

/** A use with everything its load is computed from. */
export interface RecordedUse {
  readonly row: UseRow;
  readonly boltSet: number;
  /** Studs of the set; null when the joint as it stood then does not say. */
  readonly studs: number | null;
  readonly use: AffectedUse;
}

/** Reads the records behind the uses: what was dialled, by which certificate, and the joint as it stood then. */
export async function recordedUses(
  db: Db,
  site: Site,
  subject: Subject,
  basis: FailingBasis,
  rows: readonly UseRow[],
): Promise<RecordedUse[]> {
  const bodies = await bodiesOf(
    db,
    rows.map(({ eventId }) => eventId),
  );
  const works = rows.flatMap((row) => {
    const body = bodies.get(row.eventId);
    return body === undefined ? [] : [{ row, work: (JSON.parse(body) as EventBody).data as Tightening }];
  });
  const tools = await toolsOf(
    db,
    works.map(({ work }) => work),
  );
  const jointOf = await jointsAtTheTime(db, works);
  return works.map(({ row, work }) => {
    const joint = jointOf(row.jointId, work);
    const wrench = wrenchOf(work, subject.id);
    const { tools: set, method, load } = work.data;
    const { source, assumption, limitsKnown } = sourceOf(basis, subject, wrench, method === 'tensioner');
    const failingId = basis.kind === 'certificate' ? basis.id : null;
    const drive = found(tools, wrench.driveId, 'drive unit', failingId);
    const gauge = found(tools, set.gaugeId, 'gauge', failingId);
    const date = dateAtSite(work.data.happenedAt, site.timeZone);
    const hydraulics = hydraulicsOf({ set: { ...NO_PARTS, drive, gauge }, startsOn: date });
    const dialled = work.data.dialled?.si ?? null;
    const rested = restedOn(tools.get(wrench.driveId ?? ''), work.torque.certificateId);
    return {
      row,
      boltSet: work.data.boltSet ?? 0,
      studs: joint?.basis.joint.boltCount ?? null,
      use: {
        source,
        assumption,
        limitsKnown,
        joint,
        tensionedLoad: method === 'tensioner' ? (load?.si ?? null) : null,
        dialled,
        pressure: dialled === null ? null : (hydraulics.correction?.toReference(dialled) ?? dialled),
        torque: work.torque.torque,
        line: rested ?? hydraulics.line,
        nutFactor: joint?.basis.friction.nutFactor?.value ?? null,
        gauge: gauge === null ? null : readingOf(gauge),
      },
    };
  });
}

const NO_PARTS: CardInput['set'] = {
  drive: null,
  cassette: null,
  reducers: [],
  pump: null,
  gauge: null,
  hoses: [],
  couplers: [],
  counterhold: null,
  further: [],
};

/** The wrench the subject was a part of; the first one for what all of them share. */
function wrenchOf({ data: { tools } }: Tightening, subjectId: string): Wrench {
  // A body recorded before several wrenches were kept names none beside the first.
  const further = tools.further ?? [];
  const own = [tools, ...further].find(
    ({ driveId, cassetteId, reducerIds }) =>
      driveId === subjectId || cassetteId === subjectId || reducerIds.includes(subjectId),
  );
  const drivenBy = [tools.pumpId, tools.gaugeId].filter((id) => id !== null);
  return { ...(own ?? tools), drivenBy };
}

async function toolsOf(db: Db, works: readonly Tightening[]): Promise<Map<string, AnyTool>> {
  const ids = works.flatMap(({ data: { tools } }) => [
    tools.driveId,
    tools.gaugeId,
    ...(tools.further ?? []).map(({ driveId }) => driveId),
  ]);
  const known = [...new Set(ids.filter((id) => id !== null))];
  const tools = new Map<string, AnyTool>();
  for (const part of chunks(known)) {
    for (const tool of await toolsWithCertificates(db, { ids: part })) tools.set(tool.id, tool);
  }
  return tools;
}

type Part = 'drive unit' | 'gauge';

/** The tool with the certificates people could go by then: the one that showed it wrong is not one of them. */
function found<C extends Part>(
  tools: ReadonlyMap<string, AnyTool>,
  id: string | null,
  toolClass: C,
  failingId: string | null,
): ToolOnRegister<C> | null {
  const tool = tools.get(id ?? '');
  if (tool === undefined || !isOf(tool, toolClass)) return null;
  return { ...tool, certificates: tool.certificates.filter((one) => one.id !== failingId) };
}

const isOf = <C extends Part>(tool: AnyTool, toolClass: C): tool is ToolOnRegister<C> =>
  tool.data.properties.class === toolClass;

/** Line of the certificate the record itself names. */
function restedOn(drive: AnyTool | undefined, certificateId: string | null): CertificateLineView | null {
  const certificate = drive?.certificates.find(({ id }) => id === certificateId);
  return certificate === undefined ? null : lineOfCertificate(certificate.data);
}

function readingOf({ data: { properties } }: ToolOnRegister<'gauge'>) {
  const { accuracy, scaleMax, graduation } = properties;
  return { limit: accuracy.si * scaleMax.si, graduation: graduation.si };
}

type JointThen = AffectedUse['joint'];

/** The joint in the version each record froze, seen by its bolt set; the site's own tables as they stand now. */
export async function jointsAtTheTime(
  db: Db,
  works: readonly { readonly row: Pick<UseRow, 'jointId'>; readonly work: Tightening }[],
): Promise<(jointId: string, work: Tightening) => JointThen> {
  const versions = await jointVersions(db, [...new Set(works.map(({ row }) => row.jointId))]);
  const known = new Map<string, JointThen>();
  const keyOf = (jointId: string, { jointVersion, data }: Tightening) =>
    `${jointId} ${jointVersion} ${data.boltSet ?? 0}`;
  for (const { row, work } of works) {
    const key = keyOf(row.jointId, work);
    if (known.has(key)) continue;
    const stored = versions.get(`${row.jointId} ${work.jointVersion}`);
    const data = stored === undefined ? null : jointOfSet(stored, work.data.boltSet ?? 0);
    const joint =
      stored === undefined || data === null
        ? null
        : {
            data,
            basis: jointBasis({
              joint: { id: row.jointId, version: work.jointVersion, data },
              site: await siteTablesFor(db, stored),
            }),
          };
    known.set(key, joint);
  }
  return (jointId, work) => known.get(keyOf(jointId, work)) ?? null;
}

async function jointVersions(db: Db, jointIds: readonly string[]): Promise<Map<string, JointData>> {
  const versions = new Map<string, JointData>();
  for (const part of chunks(jointIds)) {
    const rows = await db
      .selectFrom('event_joint')
      .innerJoin('event', 'event.id', 'event_joint.event_id')
      .select('event.body')
      .where('event_joint.joint_id', 'in', part)
      .where('event.kind', '=', 'joint saved')
      .execute();
    for (const { body } of rows) {
      const { id, version, data } = (JSON.parse(body) as EventBody).data as EventDataByKind['joint saved'];
      versions.set(`${id} ${version}`, data);
    }
  }
  return versions;
}
