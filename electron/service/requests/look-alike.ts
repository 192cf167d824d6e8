import { lookAlikes } from '../../../core/joint/look-alike.ts';
import { notFound } from '../failure.ts';
import { statesOf } from '../life/standing.ts';
import { withCandidates } from '../repositories/look-alike.ts';
import type { Read } from './handler.ts';

export const listLookAlikes: Read<'joint.lookAlikes'> = async ({ db }, { id }) => {
  const found = await withCandidates(db, id);
  if (found === null) throw notFound('joint', 'id', id);
  const alike = lookAlikes(found.own, found.others);
  const states = await statesOf(
    db,
    alike.map(({ joint }) => joint.id),
  );
  const rows = alike.map(({ joint, reasons, tells, differences, oneIsLive }) => ({
    id: joint.id,
    tag: joint.tag,
    unitName: joint.unitName,
    flange: joint.flange,
    service: joint.service,
    location: joint.location,
    state: states.get(joint.id) ?? null,
    reasons: [...reasons],
    tells: [...tells],
    differences: differences.map((each) => ({ ...each })),
    oneIsLive,
  }));
  return { rows, total: rows.length };
};
