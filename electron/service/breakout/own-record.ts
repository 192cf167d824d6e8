import { type DatedOpening, ownCoverage, serviceTrends } from '../../../core/breakout/own-record.ts';
import { plantOpening } from '../../../core/breakout/recorded.ts';
import type { ReadContext } from '../context.ts';
import { plantKnowledge, traitsAt } from './plant.ts';

/** How forecasts of this plant come out on its own openings, and which services move. */
export async function ownRecordOf({ db }: ReadContext) {
  const { openings, joints } = await plantKnowledge(db);
  const dated = openings
    .flatMap((opening): DatedOpening[] => {
      const joint = joints.get(opening.jointId);
      if (joint === undefined) return [];
      return [{ ...plantOpening(opening, traitsAt(opening, joint)), at: opening.happenedAt }];
    })
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  return { coverage: ownCoverage(dated), trends: serviceTrends(dated) };
}
