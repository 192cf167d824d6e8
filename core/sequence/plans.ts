/** One trip over the bolts. `fraction` of the target; null for the snug pass, which is felt and not dialled. */
interface PassStep {
  readonly name: string;
  readonly order: 'by hand' | 'star' | 'circular';
  readonly fraction: number | null;
  readonly stopWhen: string;
}

export interface PassPlan {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  readonly steps: readonly PassStep[];
}

const SNUG: PassStep = {
  name: 'Snug',
  order: 'by hand',
  fraction: null,
  stopWhen: 'two to three threads showing at both ends and the gap even all round',
};

const STALL = 'the tool stalls at the set pressure and one more stroke does not move the nut';
const NO_TURN = 'no nut turns any more; go round again while one does';

/** Pass plans that ship with the program. A site adds its own beside them. */
export const PASS_PLANS: readonly PassPlan[] = [
  {
    id: 'staged-thirds',
    name: 'Staged thirds',
    source: 'common practice',
    steps: [
      SNUG,
      { name: 'First third', order: 'star', fraction: 1 / 3, stopWhen: STALL },
      { name: 'Second third', order: 'star', fraction: 2 / 3, stopWhen: STALL },
      { name: 'Full', order: 'star', fraction: 1, stopWhen: STALL },
      { name: 'Round', order: 'circular', fraction: 1, stopWhen: NO_TURN },
    ],
  },
  {
    id: 'pcc-1-legacy',
    name: 'PCC-1 legacy pattern',
    source: 'ASME PCC-1-2013, Table 2, from memory',
    steps: [
      SNUG,
      { name: 'Round 1, 20 to 30 %', order: 'star', fraction: 0.3, stopWhen: `${STALL}; check the gap` },
      { name: 'Round 2, 50 to 70 %', order: 'star', fraction: 0.7, stopWhen: `${STALL}; check the gap` },
      { name: 'Round 3, 100 %', order: 'star', fraction: 1, stopWhen: `${STALL}; check the gap` },
      { name: 'Round 4, 100 %', order: 'circular', fraction: 1, stopWhen: NO_TURN },
      {
        name: 'Round 5, 100 %, at least 4 h later',
        order: 'circular',
        fraction: 1,
        stopWhen: 'every nut has been tried once more',
      },
    ],
  },
];

/** The plan with this id, or null. */
export function findPlan(id: string): PassPlan | null {
  return PASS_PLANS.find((plan) => plan.id === id) ?? null;
}
