import type { Working } from '../contract/setting.ts';
import { startsFromGasket } from '../joint/target.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';
import type { StudStress } from './loads.ts';
import { stressUnit, torqueUnit } from './show.ts';
import { known, number, ofThread, result, words } from './working.ts';

/**
 * Shows how the load to aim at came about.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @returns working, or null while the load is not known
 * @example targetLoadWorking(input, basis)?.of // 'targetLoad'
 * @source each working names its own
 */
export function targetLoadWorking(
  input: CardInput,
  { joint, friction, selection, targetLoad }: Basis,
): Working | null {
  const { target } = input.joint.data;
  if (target === null || targetLoad === null) return null;
  const thread = joint.thread?.value ?? null;
  const common = {
    of: 'targetLoad' as const,
    title: 'Load to aim at',
    result: result('F', 'bolt load', targetLoad, 'kN'),
  };
  const basis = words('', 'basis', target.basis, 'entered', 'joint data');
  if (target.mode === 'bolt load') {
    const load = number('F', 'bolt load', target.load.si, target.load.unit, 'entered', target.basis);
    return { ...common, relation: 'F as entered', inputs: [load, basis], source: target.basis };
  }
  if (target.mode === 'torque') {
    return {
      ...common,
      relation: 'F = T / ( K · D )',
      inputs: [
        number('T', 'torque', target.torque.si, target.torque.unit, 'entered', target.basis),
        known('K', 'nut factor', friction.nutFactor, friction.nutFactor?.value ?? null, 'one'),
        known('D', 'nominal diameter', joint.thread, thread?.diameter ?? null, 'mm'),
        basis,
      ],
      source: 'nut-factor form; ASME PCC-1-2013, Appendix K, from memory',
    };
  }
  if (startsFromGasket(target)) {
    return {
      ...common,
      relation: 'F = σb · Ar',
      inputs: [
        number(
          'σb',
          'selected bolt stress on the root area',
          selection?.selected ?? null,
          stressUnit(input),
          'calculated',
          `${target.mode}; governs: ${selection?.governing ?? 'not known'}`,
        ),
        ofThread('Ar', thread),
        basis,
      ],
      source: 'ASME PCC-1-2013, Appendix O (from memory)',
    };
  }
  const symbol = target.area === 'tensile' ? 'As' : 'Ar';
  const areaInput = ofThread(symbol, thread);
  if (target.mode === 'bolt stress') {
    return {
      ...common,
      relation: `F = σ · ${symbol}`,
      inputs: [
        number(
          'σ',
          `bolt stress on the ${target.area} area`,
          target.stress.si,
          target.stress.unit,
          'entered',
          target.basis,
        ),
        areaInput,
        basis,
      ],
      source: 'definition of stress',
    };
  }
  return {
    ...common,
    relation: `F = x · Re · ${symbol}`,
    inputs: [
      number(
        'x',
        `share of yield on the ${target.area} area`,
        target.percent.si,
        'percent',
        'entered',
        target.basis,
      ),
      known(
        'Re',
        'yield strength',
        joint.yieldStrength,
        joint.yieldStrength?.value ?? null,
        stressUnit(input),
      ),
      areaInput,
      basis,
    ],
    source: 'definition of stress',
  };
}

/**
 * Shows how the torque to aim at came about; a torque target has none, it is entered.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @returns working, or null where there is none
 * @example targetTorqueWorking(input, basis)?.of // 'torque'
 * @source each working names its own
 */
export function targetTorqueWorking(input: CardInput, basis: Basis): Working | null {
  const { joint, friction, targetTorque, targetLoad } = basis;
  if (targetTorque === null || friction.nutFactor === null) return null;
  if (input.joint.data.target?.mode === 'torque') return null;
  return {
    of: 'torque',
    title: 'Torque to aim at',
    relation: 'T = K · F · D',
    inputs: [
      known('K', 'nut factor', friction.nutFactor, friction.nutFactor.value, 'one'),
      number('F', 'bolt load', targetLoad, 'kN', 'calculated', 'load to aim at'),
      known('D', 'nominal diameter', joint.thread, joint.thread?.value.diameter ?? null, 'mm'),
    ],
    result: result('T', 'torque', targetTorque, torqueUnit(input)),
    source: 'nut-factor form; ASME PCC-1-2013, Appendix K, from memory',
  };
}

/**
 * Shows how load and stresses of one stud came about.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param stress stresses of one stud, Pa
 * @param torque T, N·m, at least 0, or null when not known
 * @param loadName what the load is called here
 * @returns workings, each naming its relation, inputs and source
 * @example stressWorkings(input, basis, stress, 384, 'load').length > 1 // true
 * @source each working names its own
 */
export function stressWorkings(
  input: CardInput,
  { joint, friction }: Basis,
  stress: StudStress,
  torque: number | null,
  loadName: string,
): Working[] {
  const thread = joint.thread?.value ?? null;
  if (thread === null) return [];
  const unit = stressUnit(input);
  const load = number('F', loadName, stress.load, 'kN', 'calculated', 'load per stud');
  const workings: Working[] = [];
  if (torque !== null && friction.nutFactor !== null) {
    workings.push({
      of: 'load',
      title: 'Load per stud',
      relation: 'F = T / ( K · D )',
      inputs: [
        number('T', 'torque', torque, torqueUnit(input), 'calculated', loadName),
        known('K', 'nut factor', friction.nutFactor, friction.nutFactor.value, 'one'),
        known('D', 'nominal diameter', joint.thread, thread.diameter, 'mm'),
      ],
      result: result('F', 'load per stud', stress.load, 'kN'),
      source: 'nut-factor form; ASME PCC-1-2013, Appendix K, from memory',
    });
  }
  workings.push(
    {
      of: 'stressTensile',
      title: 'Stress on the tensile area',
      relation: 'σ = F / As',
      inputs: [load, ofThread('As', thread)],
      result: result('σ', 'stress on the tensile area', stress.tensile, unit),
      source: 'definition of stress',
    },
    {
      of: 'stressRoot',
      title: 'Stress on the root area',
      relation: 'σ = F / Ar',
      inputs: [load, ofThread('Ar', thread)],
      result: result('σ', 'stress on the root area', stress.root, unit),
      source: 'definition of stress',
    },
  );
  if (stress.axialOfYield === null) return workings;
  const yieldInput = known(
    'Re',
    'yield strength',
    joint.yieldStrength,
    joint.yieldStrength?.value ?? null,
    unit,
  );
  const sigma = number(
    'σ',
    'stress on the tensile area',
    stress.tensile,
    unit,
    'calculated',
    'stress on the tensile area',
  );
  workings.push({
    of: 'axialOfYield',
    title: 'Share of yield, axial',
    relation: 'x = σ / Re',
    inputs: [sigma, yieldInput],
    result: result('x', 'share of yield', stress.axialOfYield, 'percent'),
    source: 'definition',
  });
  if (stress.combinedElasticOfYield === null || friction.pair === null) return workings;
  workings.push({
    of: 'combinedOfYield',
    title: 'Share of yield with torsion, elastic section modulus',
    relation:
      'x = √( σ² + 3 · τ² ) / Re,  τ = Tthread / ( π · ds³ / 16 ),  Tthread = F · [ P / 2π + μt · d2 / ( 2 · cos 30° ) ]',
    inputs: [
      sigma,
      number(
        'Tthread',
        'torque through the thread',
        stress.threadTorque,
        torqueUnit(input),
        'calculated',
        'long form',
      ),
      number(
        'μt',
        'friction in the thread',
        friction.pair.thread,
        'one',
        friction.assumed ? 'assumed' : 'calculated',
        friction.pair.rule,
      ),
      ofThread('ds', thread),
      yieldInput,
      number(
        'x plastic',
        'the same with the plastic section modulus',
        stress.combinedPlasticOfYield,
        'percent',
        'calculated',
        'π · ds³ / 12',
      ),
    ],
    result: result('x', 'share of yield', stress.combinedElasticOfYield, 'percent'),
    source: 'von Mises; VDI 2230-1',
  });
  return workings;
}
