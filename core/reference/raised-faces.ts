import type { RowStatus } from './status.ts';

/**
 * Heights of raised faces. ASME: by class, metric tables; the inch tables print 0.06 and 0.25 in, a rounding between the
 * two systems. Never part of the flange thickness of the 2003 and later editions. EN: by DN, BS 4504-1:1969.
 */
export type RaisedFaceRow = readonly [
  standard: 'ASME B16.5' | 'EN 1092-1',
  by: 'class' | 'DN',
  from: number,
  to: number,
  heightMm: number,
  sources: string,
  status: RowStatus,
];

export const RAISED_FACES: readonly RaisedFaceRow[] = [
  ['ASME B16.5', 'class', 150, 300, 2, 'U1+U1b+S1', 'DISAGREE'],
  ['ASME B16.5', 'class', 400, 2500, 7, 'U1+U1b', 'AGREE'],
  ['EN 1092-1', 'DN', 10, 32, 2, 'U2', 'SINGLE'],
  ['EN 1092-1', 'DN', 40, 250, 3, 'U2', 'SINGLE'],
  ['EN 1092-1', 'DN', 300, 500, 4, 'U2', 'SINGLE'],
  ['EN 1092-1', 'DN', 600, 1200, 5, 'U2', 'SINGLE'],
];
