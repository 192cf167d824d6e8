import { LEAST_DWELL } from './dwell.ts';
import type { ToolCount } from './multi-tool.ts';

/** One trip over the bolts. `fraction` of the target; null for the snug pass, which is felt and not dialled. */
export interface PassStep {
  readonly name: string;
  readonly order: 'by hand' | 'star' | 'circular' | 'groups';
  readonly fraction: number | null;
  /** Tools that turn at the same time, evenly around the joint. */
  readonly tools: ToolCount;
  readonly stopWhen: string;
  /** Shortest wait before this pass, s; left out where the pass follows at once. */
  readonly wait?: number;
}

export interface PassPlan {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  /** Neighbouring studs of a group; left out by plans without steps in groups. */
  readonly groupSize?: number | null;
  /** What is looked at between or after the steps. */
  readonly checks?: readonly string[];
  readonly steps: readonly PassStep[];
}

export const SNUG: PassStep = {
  name: 'Snug',
  order: 'by hand',
  fraction: null,
  tools: 1,
  stopWhen: 'two to three threads showing at both ends and the gap even all round',
};

/** When a nut is done with a hydraulic wrench; `stopWords` says it for the other methods. */
export const STALL = 'the tool stalls at the set pressure and one more stroke does not move the nut';
export const NO_TURN = 'no nut turns any more; go round again while one does';

function thirds(tools: ToolCount): PassStep[] {
  return [
    SNUG,
    { name: 'First third', order: 'star', fraction: 1 / 3, tools, stopWhen: STALL },
    { name: 'Second third', order: 'star', fraction: 2 / 3, tools, stopWhen: STALL },
    { name: 'Full', order: 'star', fraction: 1, tools, stopWhen: STALL },
    { name: 'Round', order: 'circular', fraction: 1, tools, stopWhen: NO_TURN },
  ];
}

/** Pass plans that ship with the program. A site adds its own beside them. */
export const PASS_PLANS: readonly PassPlan[] = [
  {
    id: 'staged-thirds',
    name: 'Staged thirds',
    source: 'common practice',
    steps: thirds(1),
  },
  {
    id: 'two-tools-thirds',
    name: 'Two tools at 180°, staged thirds',
    source: 'common practice',
    steps: thirds(2),
  },
  {
    id: 'four-tools-thirds',
    name: 'Four tools at 90°, staged thirds',
    source: 'common practice',
    steps: thirds(4),
  },
  {
    id: 'pcc-1-legacy',
    name: 'PCC-1 legacy pattern',
    source: 'ASME PCC-1-2013, Table 2, from memory',
    steps: [
      SNUG,
      {
        name: 'Round 1, 20 to 30 %',
        order: 'star',
        fraction: 0.3,
        tools: 1,
        stopWhen: `${STALL}; check the gap`,
      },
      {
        name: 'Round 2, 50 to 70 %',
        order: 'star',
        fraction: 0.7,
        tools: 1,
        stopWhen: `${STALL}; check the gap`,
      },
      { name: 'Round 3, 100 %', order: 'star', fraction: 1, tools: 1, stopWhen: `${STALL}; check the gap` },
      { name: 'Round 4, 100 %', order: 'circular', fraction: 1, tools: 1, stopWhen: NO_TURN },
      {
        name: 'Round 5, 100 %, at least 4 h later',
        order: 'circular',
        fraction: 1,
        tools: 1,
        stopWhen: 'every nut has been tried once more',
        wait: LEAST_DWELL,
      },
    ],
  },
];

/**
 * Finds one of the program’s own plans.
 *
 * @param id id of the plan
 * @returns the plan, or null when the program has none of that id
 * @example findPlan('staged-thirds')?.name // 'Staged thirds'
 * @source each plan names its own
 */
export function findPlan(id: string): PassPlan | null {
  return PASS_PLANS.find((plan) => plan.id === id) ?? null;
}
