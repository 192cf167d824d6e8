import type { LimitRow } from '../contract/card-views.ts';
import type { SettingCard, Working } from '../contract/setting.ts';
import type { Basis } from './basis.ts';
import { budgetOf, uncertaintyWorking } from './budget.ts';
import type { Hydraulics } from './hydraulics.ts';
import type { CardInput } from './input.ts';
import { intervalWorking, simulate } from './simulation.ts';
import type { Work } from './work.ts';

interface UncertaintySection {
  readonly view: SettingCard['uncertainty'];
  readonly workings: readonly Working[];
}

/**
 * Budget at the dialled pressure, and the simulated spread of the load where it is asked for.
 *
 * @param input input of the card
 * @param hydraulics chosen set as it stands on the job’s first day
 * @param basis what the joint alone says
 * @param work dialled mark and load of the job
 * @param limits limit rows of the card
 * @returns budget, spread and workings; null where they are not known or not asked for
 * @example uncertaintyOf(input, hydraulics, basis, { dialled: null, load: null }, []).view // null
 * @source JCGM 100:2008 (GUM); JCGM 101:2008
 */
export function uncertaintyOf(
  input: CardInput,
  hydraulics: Hydraulics,
  basis: Basis,
  { dialled, load }: Work,
  limits: readonly LimitRow[],
): UncertaintySection {
  const budget = budgetOf(input, hydraulics, basis, dialled);
  if (budget === null) return { view: null, workings: [] };
  const { view, contributors } = budget;
  const plain = { view, workings: [uncertaintyWorking(input, basis, view)] };
  if (!input.withUncertainty || load === null || contributors.length === 0) return plain;
  const simulation = simulate(basis, load, contributors, limits);
  if (simulation === null) return plain;
  return {
    view: { ...view, simulation },
    workings: [...plain.workings, intervalWorking(load, contributors, simulation)],
  };
}
