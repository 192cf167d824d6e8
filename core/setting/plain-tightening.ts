import type { Working } from '../contract/setting.ts';
import { passRows } from '../sequence/passes.ts';
import { stopWords } from '../sequence/stop-words.ts';
import type { Basis } from './basis.ts';
import { checkLimits } from './check-limits.ts';
import { checkStud } from './check-stud.ts';
import type { CardInput } from './input.ts';
import { studStress } from './loads.ts';
import { checkPlan, planOf } from './plan.ts';
import { torqueLimits } from './tightening.ts';
import { plainPass, plainSetting } from './without-pressure.ts';
import type { Work } from './work.ts';
import { number, result, words } from './working.ts';
import { targetLoadWorking, targetTorqueWorking } from './workings-load.ts';

/**
 * Works out tightening with a tool that has no pressure, or with tensioners.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @returns passes, load, findings and workings
 * @example plainTightening({ ...input, method: 'tensioner' }, basis).dialled // null
 * @source each working names its own
 */
export function plainTightening(input: CardInput, basis: Basis): Work {
  const plan = planOf(input);
  const limits = torqueLimits(input, basis);
  const { view, load, findings } = plainSetting(input, basis, limits);
  const tensioned = input.method === 'tensioner';
  const torque = tensioned ? null : basis.targetTorque;
  return {
    planName: plan?.name ?? 'not known',
    torque,
    dialled: null,
    toolSetting: view,
    load,
    loadName: view === null ? 'load to aim at' : 'load at the torque set on the tool',
    passes:
      plan === null
        ? []
        : passRows(plan, basis.joint.boltCount, (fraction) => plainPass(input, basis, fraction, limits)).map(
            (pass) => ({ ...pass, stopWhen: stopWords(input.method, pass.stopWhen) }),
          ),
    pressures: [],
    breakout: null,
    findings: [
      ...checkPlan(input, plan),
      ...findings,
      ...checkLimits(input, load === null ? null : studStress(basis, load)),
      ...checkStud(input, basis),
    ],
    workings: () => [
      targetLoadWorking(input, basis),
      tensioned ? null : targetTorqueWorking(input, basis),
      view === null || torque === null ? null : settingWorking(view, torque),
    ],
  };
}

function settingWorking(view: NonNullable<Work['toolSetting']>, wanted: number): Working {
  return {
    of: 'toolSetting',
    title: 'What to set on the tool',
    relation: 'nearest mark or step that exceeds no limit',
    inputs: [
      number('T', 'torque to aim at', wanted, 'N.m', 'calculated', 'torque to aim at'),
      words('', 'setting', view.text, 'calculated', view.basis),
      number('', 'deviation', view.deviation, 'percent', 'calculated', 'this working'),
    ],
    result: result('T', 'torque given', view.torque, 'N.m'),
    source: 'rounding rule of this program',
  };
}
