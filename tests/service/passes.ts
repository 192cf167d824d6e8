import type { PassInput } from '../../core/contract/pass.ts';
import type { TestPlant } from './records.ts';

/** Order of worked joint A's star passes, as the main job's test reads it from the card. */
export const STAR = [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12];
export const ROUND = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

/** Passes of the plan "staged thirds", with what worked joint A dials for each. */
export const PASSES = [
  { name: 'Snug', bolts: STAR, bar: null },
  { name: 'First third', bolts: STAR, bar: '90' },
  { name: 'Second third', bolts: STAR, bar: '170' },
  { name: 'Full', bolts: STAR, bar: '260' },
  { name: 'Round', bolts: ROUND, bar: '260' },
] as const;

export interface Run {
  readonly plant: TestPlant;
  readonly runId: string;
  readonly settingId: string | null;
  readonly confirmedBy: string | null;
}

/** A whole pass as the plan says; what differs is given. */
export function passOf(
  { plant, runId, settingId, confirmedBy }: Run,
  pass: number,
  changes: Partial<PassInput> = {},
): PassInput {
  const { name, bolts, bar } = PASSES[pass - 1] ?? PASSES[0];
  return {
    runId,
    jointId: plant.jointId,
    settingId,
    pass,
    of: PASSES.length,
    name,
    boltsDone: [...bolts],
    dialled: bar === null ? null : { text: bar, unit: 'bar' },
    tools: plant.tools,
    personIds: [plant.personId],
    setBy: bar === null ? null : plant.personId,
    confirmedBy: bar === null ? null : confirmedBy,
    startedAt: '2026-03-16T09:00:00+01:00',
    endedAt: `2026-03-16T10:0${pass}:00+01:00`,
    stoppedBecause: null,
    ...changes,
  };
}
