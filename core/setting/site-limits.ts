import type { LimitRow } from '../contract/card-views.ts';
import type { JointData } from '../contract/joint.ts';
import type { Basis } from './basis.ts';
import type { StudStress } from './loads.ts';

/**
 * Shows the site’s own limits and yield as rows, each with the stress on the area it refers to.
 *
 * @param data joint as stored
 * @param basis what the joint alone says
 * @param stress stresses of one stud, Pa
 * @returns rows with state met, broken or not known
 * @example siteLimitRows(complete.joint.data, basisOf(complete), stress).every((one) => one.state === 'met') // true
 * @source limits as entered
 */
export function siteLimitRows(data: JointData, { joint }: Basis, stress: StudStress): LimitRow[] {
  const { limits } = data;
  const area = limits.boltStressArea;
  const value = area === 'tensile' ? stress.tensile : stress.root;
  const source = limits.source || 'joint data';
  const row = (
    name: string,
    side: LimitRow['side'],
    limit: { readonly si: number } | null,
    need: string,
  ): LimitRow => ({
    name,
    step: null,
    case: null,
    gasket: null,
    side,
    area,
    value,
    limit: limit?.si ?? null,
    state: stateOf(value, limit?.si ?? null, side),
    needs: limit === null ? [need] : [],
    source,
  });
  const yieldStrength = joint.yieldStrength?.value ?? null;
  return [
    row('largest bolt stress', 'at most', limits.boltStressMax, 'enter the site’s limit for this stud'),
    row('least bolt stress', 'at least', limits.boltStressMin, 'enter the least bolt stress that seals'),
    row(
      'largest bolt stress by the flange',
      'at most',
      limits.flangeBoltStressMax,
      'enter the limit from the flange’s calculation',
    ),
    {
      ...row('yield strength, axial', 'at most', null, ''),
      area: 'tensile',
      value: stress.tensile,
      limit: yieldStrength,
      state: stateOf(stress.tensile, yieldStrength, 'at most'),
      needs: yieldStrength === null ? ['enter the stud’s grade or its yield strength'] : [],
      source: joint.yieldStrength?.source ?? 'joint data',
    },
  ];
}

/** Floating point must not break a limit that was entered as the stress itself. */
const SLACK = 1 + 1e-9;

function stateOf(value: number | null, limit: number | null, side: LimitRow['side']): LimitRow['state'] {
  if (value === null || limit === null) return 'not known';
  const met = side === 'at most' ? value <= limit * SLACK : value * SLACK >= limit;
  return met ? 'met' : 'not met';
}
