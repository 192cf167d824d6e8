import type { Working, WorkingInput } from '../contract/setting.ts';
import type { Known } from '../joint/known.ts';
import type { Unit } from '../units/units.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';
import type { LoadedGasket } from './loaded-gasket.ts';
import type { StudStress } from './loads.ts';
import { loadOfSets } from './set-shares.ts';
import { pressureUnit, stressUnit } from './show.ts';
import { known, number, result, words } from './working.ts';

const APPENDIX_O = 'ASME PCC-1-2013, Appendix O (from memory)';

/**
 * Shows how the numbers of one gasket came about.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param loaded gasket under the card’s load
 * @param stress stresses of one stud, Pa
 * @returns workings, each naming its relation, inputs and source
 * @example gasketWorkings(complete, basisOf(complete), loaded, stress).length > 3 // true
 * @source each working names its own
 */
export function gasketWorkings(
  input: CardInput,
  basis: Basis,
  loaded: LoadedGasket,
  stress: StudStress,
): Working[] {
  return [
    ...areaWorking(loaded),
    ...sharesWorking(basis, stress, loaded),
    ...stressWorking(input, basis, loaded, stress),
    ...loaded.view.cases.flatMap((one) => caseWorkings(input, basis, loaded, stress, one)),
    ...limitWorkings(input, basis, loaded),
    ...codeWorking(input, basis, loaded),
  ];
}

/** A value of the gasket's data sheet as an input of a relation. */
function sheet(
  { gasket }: LoadedGasket,
  symbol: string,
  name: string,
  value: { readonly si: number; readonly unit: WorkingInput['unit'] } | null,
): WorkingInput {
  const source = gasket.data.source || 'joint data';
  return {
    symbol,
    name,
    si: value?.si ?? null,
    text: null,
    unit: value?.unit ?? 'one',
    origin: 'entered',
    source,
  };
}

/** A value of the gasket that a table may have filled. */
function filled(symbol: string, name: string, value: Known<number> | null, unit: Unit): WorkingInput {
  return known(symbol, name, value, value?.value ?? null, unit);
}

function insideInput({ gasket }: LoadedGasket): WorkingInput {
  const { contactInside, pitchDiameter } = gasket.values;
  return filled('Gid', 'inside of the gasket', contactInside ?? pitchDiameter, 'mm');
}

function areaInput({ view }: LoadedGasket): WorkingInput {
  return number('Ag', 'gasket area', view.area, 'mm2', 'calculated', 'gasket area');
}

function areaWorking(loaded: LoadedGasket): Working[] {
  const { gasket, view } = loaded;
  if (view.area === null) return [];
  const { contactOutside, contactInside } = gasket.values;
  const { partitionArea, partitionShare } = gasket.data;
  return [
    {
      of: 'gasketArea',
      title: `Gasket area: ${view.name}`,
      relation: partitionArea === null ? 'Ag = π/4 · ( Do² − Di² )' : 'Ag = π/4 · ( Do² − Di² ) + s · Abars',
      inputs: [
        filled('Do', 'outside of the sealing element', contactOutside, 'mm'),
        filled('Di', 'inside of the sealing element', contactInside, 'mm'),
        ...(partitionArea === null
          ? []
          : [
              sheet(loaded, 'Abars', 'pass-partition bars', partitionArea),
              sheet(loaded, 's', 'counted part of the bars', partitionShare),
            ]),
      ],
      result: result('Ag', 'gasket area', view.area, 'mm2'),
      source: 'plane geometry; counted part by site rule',
    },
  ];
}

/** What each bolt set puts on the gasket, where there are several. */
function sharesWorking({ joint, others }: Basis, stress: StudStress, { view }: LoadedGasket): Working[] {
  const rest = loadOfSets(others);
  if (others.length === 0 || rest === null || joint.boltCount === null) return [];
  return [
    {
      of: 'gasketStress',
      title: `Load of all bolt sets on the gasket: ${view.name}`,
      relation: 'W = nb · F + Wo,  Wo = Σ nb · F of the other sets, each at its target',
      inputs: [
        known('nb', 'number of studs', joint.count, joint.boltCount, 'one'),
        number('F', 'load per stud', stress.load, 'kN', 'calculated', 'load per stud'),
        ...others.flatMap(({ name, count, load }) => [
          number('nb', `number of studs, ${name}`, count, 'one', 'calculated', 'joint data or flange table'),
          number('F', `load per stud, ${name}`, load, 'kN', 'calculated', 'its target'),
        ]),
        number('Wo', 'load of the other sets', rest, 'kN', 'calculated', 'this working'),
      ],
      result: result('W', 'load on the gasket', joint.boltCount * stress.load + rest, 'kN'),
      source: 'equilibrium; that every set loads this gasket is taken from the joint data',
    },
  ];
}

/** Load of the other sets as an input; none where the joint has one set. */
function otherSetsInput({ others }: Basis): WorkingInput[] {
  return others.length === 0
    ? []
    : [
        number(
          'Wo',
          'load of the other sets',
          loadOfSets(others),
          'kN',
          'calculated',
          'load of all bolt sets on the gasket',
        ),
      ];
}

function stressWorking(input: CardInput, basis: Basis, loaded: LoadedGasket, stress: StudStress): Working[] {
  if (loaded.view.stress === null) return [];
  const { joint } = basis;
  return [
    {
      of: 'gasketStress',
      title: `Gasket stress at the end of tightening: ${loaded.view.name}`,
      relation: basis.others.length === 0 ? 'SG = nb · F / Ag' : 'SG = ( nb · F + Wo ) / Ag',
      inputs: [
        known('nb', 'number of studs', joint.count, joint.boltCount, 'one'),
        number('F', 'load per stud', stress.load, 'kN', 'calculated', 'load per stud'),
        ...otherSetsInput(basis),
        areaInput(loaded),
      ],
      result: result('SG', 'gasket stress', loaded.view.stress, stressUnit(input)),
      source: 'definition of stress',
    },
  ];
}

function caseWorkings(
  input: CardInput,
  basis: Basis,
  loaded: LoadedGasket,
  stress: StudStress,
  one: LoadedGasket['view']['cases'][number],
): Working[] {
  const { pressures } = input.joint.data;
  const { joint } = basis;
  const shared = otherSetsInput(basis);
  const retained =
    one.case === 'test' ? loaded.gasket.data.retainedTest : loaded.gasket.data.retainedOperating;
  const fraction = sheet(loaded, 'φg', 'part of the load left after relaxation', retained);
  const unit = pressures[one.case].pressure?.unit ?? pressureUnit(input);
  const source = pressures.source || 'joint data';
  const pressure = number('p', `${one.case} pressure`, one.pressure, unit, 'entered', source);
  const count = known('nb', 'number of studs', joint.count, joint.boltCount, 'one');
  const inside = insideInput(loaded);
  const name = `${one.case} case, ${loaded.view.name}`;
  const workings: Working[] = [];
  if (one.endForcePerBolt !== null) {
    workings.push({
      of: 'endForce',
      title: `Hydrostatic end force: ${name}`,
      relation: endForceRelation(shared.length > 0, retained !== null),
      inputs: [
        inside,
        pressure,
        count,
        ...shared,
        ...(shared.length > 0 && retained !== null ? [fraction] : []),
        number('H', 'whole end force', one.endForce, 'kN', 'calculated', 'this working'),
      ],
      result: result(shared.length === 0 ? 'H/nb' : '', 'end force per stud', one.endForcePerBolt, 'kN'),
      source: 'ASME BPVC VIII-1, Appendix 2, 2-5(c) (second-hand)',
    });
  }
  if (one.residualLoad === null) return workings;
  workings.push({
    of: 'residualLoad',
    title: `Load left after relaxation: ${name}`,
    relation: 'Fres = φg · F',
    inputs: [fraction, number('F', 'load per stud', stress.load, 'kN', 'calculated', 'load per stud')],
    result: result('Fres', 'load left per stud', one.residualLoad, 'kN'),
    source: APPENDIX_O,
  });
  if (one.stressLeft === null) return workings;
  workings.push({
    of: 'gasketStress',
    title: `Gasket stress left under pressure: ${name}`,
    relation:
      shared.length === 0
        ? 'SG = ( nb · Fres − π/4 · Gid² · p ) / Ag'
        : 'SG = ( nb · Fres + φg · Wo − π/4 · Gid² · p ) / Ag',
    inputs: [
      count,
      number(
        'Fres',
        'load left per stud',
        one.residualLoad,
        'kN',
        'calculated',
        'load left after relaxation',
      ),
      ...(shared.length === 0 ? [] : [...shared, fraction]),
      inside,
      pressure,
      areaInput(loaded),
    ],
    result: result('SG', 'gasket stress left', one.stressLeft, stressUnit(input)),
    source: APPENDIX_O,
  });
  return workings;
}

/** The other sets hold their part of the end force; with the fraction not known all of their load counts. */
function endForceRelation(shared: boolean, retained: boolean): string {
  if (!shared) return 'H = π/4 · Gid² · p;  per stud H / nb';
  return `H = π/4 · Gid² · p;  per stud of this set ( H − ${retained ? 'φg · ' : ''}Wo ) / nb, at least 0`;
}

function limitWorkings(input: CardInput, basis: Basis, loaded: LoadedGasket): Working[] {
  const unit = stressUnit(input);
  const { joint } = basis;
  const { data } = loaded.gasket;
  const count = known('nb', 'number of studs', joint.count, joint.boltCount, 'one');
  const root = known('Ab', 'root area of one stud', joint.thread, loaded.component.boltRootArea, 'mm2');
  const spread = [areaInput(loaded), count, root, ...otherSetsInput(basis)];
  return loaded.checks.flatMap((check): Working[] => {
    if (check.limit === null) return [];
    const inputs: WorkingInput[] = [];
    if (check.step === 5)
      inputs.push(sheet(loaded, 'Sg,minS', 'least seating stress', data.seatingStress), ...spread);
    if (check.step === 7)
      inputs.push(sheet(loaded, 'Sg,max', 'largest gasket stress', data.stressMax), ...spread);
    if (check.step === 6 && check.case !== null) {
      const { pressures } = input.joint.data;
      const { pressure } = pressures[check.case];
      inputs.push(
        sheet(loaded, 'Sg,minO', 'least operating stress', data.operatingStress),
        number(
          'Pmax',
          `${check.case} pressure`,
          pressure?.si ?? null,
          pressure?.unit ?? 'bar',
          'entered',
          pressures.source || 'joint data',
        ),
        insideInput(loaded),
        sheet(
          loaded,
          'φg',
          'part left after relaxation',
          check.case === 'test' ? data.retainedTest : data.retainedOperating,
        ),
        ...spread,
      );
    }
    if (check.step === 8) {
      inputs.push(
        number(
          'Sf,max',
          'largest bolt stress by the flange, root area',
          loaded.component.flangeStressMax,
          unit,
          'entered',
          input.joint.data.limits.source || 'joint data',
        ),
        number(
          'θf,max',
          'rotation of the flange at Sf,max',
          loaded.component.flangeRotation,
          'deg',
          'entered',
          input.joint.data.limits.source || 'joint data',
        ),
        sheet(loaded, 'θg,max', 'rotation the gasket stands', data.rotationMax),
      );
    }
    const at = check.case === null ? '' : `, ${check.case} case`;
    return [
      {
        of: 'limit',
        title: `Limit by ${check.name}${at}: ${loaded.view.name}`,
        relation: check.relation.replace('≥', '=').replace('≤', '='),
        inputs,
        result: result('σb', `bolt stress on the root area, ${check.side}`, check.limit, unit),
        source: APPENDIX_O,
      },
    ];
  });
}

function codeWorking(input: CardInput, basis: Basis, loaded: LoadedGasket): Working[] {
  const { codeMinimum: code, name } = loaded.view;
  if (code === null) return [];
  const { design } = input.joint.data.pressures;
  const { joint } = basis;
  const left =
    basis.others.length === 0 ? 'per stud: larger / nb' : 'per stud: ( larger − Wo ) / nb, at least 0';
  const mm = (symbol: string, meaning: string, si: number) =>
    number(symbol, meaning, si, 'mm', 'calculated', 'Table 2-5.2');
  return [
    {
      of: 'codeMinimum',
      title: `Code minimum: ${name}`,
      relation: `Wm1 = π/4 · G² · p + 2 · b · π · G · m · p;  Wm2 = π · b · G · y;  ${left}`,
      inputs: [
        words('', 'use', code.use, 'calculated', 'rule of this program'),
        mm('N', 'contact width, or width of the ring', code.contactWidth),
        mm('b0', 'basic width', code.basicWidth),
        mm('b', 'effective width', code.effectiveWidth),
        mm('G', 'reaction diameter', code.reactionDiameter),
        number(
          'p',
          'design pressure',
          design.pressure?.si ?? null,
          design.pressure?.unit ?? 'bar',
          'entered',
          input.joint.data.pressures.source || 'joint data',
        ),
        filled('m', 'gasket factor', loaded.gasket.values.factorM, 'one'),
        filled('y', 'seating stress of the code', loaded.gasket.values.stressY, stressUnit(input)),
        number('Wm1', 'operating', code.Wm1, 'kN', 'calculated', 'this working'),
        number('Wm2', 'seating', code.Wm2, 'kN', 'calculated', 'this working'),
        known('nb', 'number of studs', joint.count, joint.boltCount, 'one'),
        ...otherSetsInput(basis),
      ],
      result: result('W/nb', `code minimum per stud by ${code.larger}`, code.perBolt, 'kN'),
      source: 'ASME BPVC VIII-1, Appendix 2, equations (1) and (2) (second-hand)',
    },
  ];
}
