import type { ScatterData } from '../../../core/contract/scatter.ts';
import { scatterInputs } from '../../../core/scatter/inputs.ts';
import { scatterView } from '../../../core/scatter/view.ts';
import { findPlan, type PassPlan } from '../../../core/sequence/plans.ts';
import { sitePassPlan } from '../../../core/sequence/site-plan.ts';
import { setBasis } from '../breakout/joints.ts';
import type { ReadContext } from '../context.ts';
import { invalidField, notFound } from '../failure.ts';
import { findJoint } from '../repositories/joint.ts';
import { findSitePlan, siteTablesFor } from '../repositories/site-tables.ts';
import type { Read } from './handler.ts';

/** A model run for this joint; nothing is recorded. */
export const simulateScatter: Read<'scatter.simulate'> = async ({ db }, data) => {
  const joint = await findJoint(db, data.jointId);
  if (joint === null) throw notFound('joint', 'jointId', data.jointId);
  const set = setBasis(joint.id, joint.data, data.boltSet, await siteTablesFor(db, joint.data));
  if (set === null) throw invalidField('boltSet', String(data.boltSet), `a bolt set of ${joint.data.tag}`);
  const plans: PassPlan[] = [];
  for (const [index, id] of data.planIds.entries()) plans.push(await planOf(db, id, `planIds.${index}`));
  checkMeasured(data, set.basis.joint.boltCount, plans[0]);
  const inputs = scatterInputs(data, { id: joint.id, version: joint.version, data: set.data }, set.basis);
  checkSizes(data, inputs);
  return scatterView(joint.data.tag, inputs, plans, data);
};

async function planOf(db: ReadContext['db'], id: string, field: string): Promise<PassPlan> {
  const shipped = findPlan(id);
  if (shipped !== null) return shipped;
  const own = await findSitePlan(db, id);
  if (own === null) throw notFound('pass plan', field, id);
  return sitePassPlan(id, own.data);
}

function checkMeasured({ measured }: ScatterData, bolts: number | null, plan: PassPlan | undefined): void {
  const passes = plan?.steps.filter(({ fraction }) => fraction !== null).length ?? 0;
  for (const [index, { afterPass, loads }] of measured.entries()) {
    if (afterPass > passes) {
      throw invalidField(
        `measured.${index}.afterPass`,
        String(afterPass),
        `a pass of the first plan, 1 to ${passes}`,
      );
    }
    for (const [place, { bolt }] of loads.entries()) {
      if (bolts !== null && bolt > bolts) {
        const allowed = `a bolt of this joint, 1 to ${bolts}`;
        throw invalidField(`measured.${index}.loads.${place}.bolt`, String(bolt), allowed);
      }
    }
  }
}

/** A limit below the load to set would refuse every plan before it begins. */
function checkSizes({ limit }: ScatterData, { target }: { readonly target: number | null }): void {
  if (limit !== null && target !== null && limit.si < target) {
    throw invalidField('limit', limit.text, 'at least the load that is set');
  }
}
