import { type JointIdentity, jointType, valveSide } from '../../../core/contract/identity.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import { identityOf } from '../../../core/joint/identity.ts';
import { nameKey } from '../fold.ts';
import type { RowReader } from './row.ts';
import type { HeadingOfPath } from './validate.ts';

export const IDENTITY_HEADINGS: HeadingOfPath = {
  'identity.type': 'joint type',
  'identity.system': 'system',
  'identity.line': 'line',
  'identity.drawing': 'drawing',
  'identity.revision': 'drawing revision',
  'identity.landmark': 'landmark',
  'identity.direction': 'direction',
  'identity.distance': 'distance',
  'identity.grid': 'grid',
  'identity.valve': 'valve',
  'identity.valveSide': 'side of valve',
  'identity.neighbours': 'neighbours',
  'identity.testPack': 'test pack',
  'identity.isolationBoundary': 'isolation boundary',
  'identity.numberingMark': 'numbering mark',
  'identity.confusableWith': 'confusable with',
};

/** What a list says of a joint's identity; a photo and how to tell two joints apart stay as the register holds them. */
export function identityFromRow(row: RowReader, existing: JointData | null) {
  const before = existing === null ? null : identityOf(existing);
  return {
    type: row.choice('joint type', jointType.options, before?.type),
    system: row.text('system', before?.system),
    line: row.text('line', before?.line),
    drawing: row.text('drawing', before?.drawing),
    revision: row.text('drawing revision', before?.revision),
    landmark: row.text('landmark', before?.landmark),
    direction: row.text('direction', before?.direction),
    distance: row.quantity('distance', before?.distance),
    grid: row.text('grid', before?.grid),
    valve: row.text('valve', before?.valve),
    valveSide: row.choice('side of valve', valveSide.options, before?.valveSide),
    neighbours: row.has('neighbours') ? tags(row.raw('neighbours')) : (before?.neighbours ?? null),
    testPack: row.text('test pack', before?.testPack),
    isolationBoundary: row.text('isolation boundary', before?.isolationBoundary),
    numberingMark: row.text('numbering mark', before?.numberingMark),
    photo: before?.photo ?? null,
    notApplicable: before?.notApplicable ?? [],
    confusableWith: confusables(row, before?.confusableWith ?? null),
  };
}

/** Null for a blank cell: nobody has said. */
function tags(cell: string): string[] | null {
  if (cell === '') return null;
  if (nameKey(cell) === 'none') return [];
  return cell
    .split(';')
    .map((tag) => tag.trim())
    .filter((tag) => tag !== '');
}

function confusables(row: RowReader, before: JointIdentity['confusableWith']) {
  if (!row.has('confusable with')) return before;
  const named = tags(row.raw('confusable with'));
  if (named === null) return null;
  return named.map((tag) => ({
    tag,
    tell: before?.find((one) => nameKey(one.tag) === nameKey(tag))?.tell ?? '',
  }));
}

/** "yes" or "no"; null for a blank cell, which says that nobody has told. */
export function yesOrNo(row: RowReader, heading: string, otherwise: boolean | null): boolean | null {
  if (!row.has(heading)) return otherwise;
  const said = row.choice(heading, ['yes', 'no']);
  return said === null ? null : said === 'yes';
}
