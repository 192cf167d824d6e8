import type { GasketData } from '../../../core/contract/gasket.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import { identityOf, retainsPressure } from '../../../core/joint/identity.ts';
import { asTyped, entered, type JointLine, limitText, lubricantLine, targetText } from './joint-lines.ts';
import { PRESSURE_CASES } from './service-form-values.ts';

/** A folded part of the joint page. */
export interface JointGroup {
  readonly name: string;
  readonly lines: readonly JointLine[];
}

/** What stands folded below the joint's main lines, in the order of the form. */
export function jointGroups(data: JointData): JointGroup[] {
  const gaskets = data.gasket === null ? [] : [data.gasket, ...data.furtherGaskets];
  return [
    { name: 'Identity', lines: identityLines(data) },
    { name: 'Thread and nut strength', lines: strengthLines(data.bolting) },
    ...gaskets.map((gasket, at) => ({
      name: at === 0 ? 'Gasket data sheet' : `Gasket ${at + 1} in series`,
      lines: gasketLines(gasket, at),
    })),
    { name: 'Pressure cases', lines: pressureLines(data) },
    { name: 'Hot service', lines: hotLines(data) },
    { name: 'Retightening', lines: retighteningLines(data) },
    ...data.boltSets.map((set) => ({ name: `Bolt set ${set.name}`, lines: boltSetLines(set) })),
  ];
}

function identityLines(data: JointData): JointLine[] {
  const identity = identityOf(data);
  const { neighbours, confusableWith } = identity;
  const where = [asTyped(identity.distance), identity.direction].filter(Boolean).join(' ');
  return [
    entered('Landmark', identity.landmark),
    entered('From the landmark', where),
    entered('Grid or elevation', identity.grid),
    entered('Valve', identity.valve),
    entered('Side of the valve', identity.valveSide),
    entered('Neighbours', noneOr(neighbours)),
    entered('Type of joint', identity.type),
    entered('Bolt 1 is marked', identity.numberingMark),
    entered('System', identity.system),
    entered('Line or equipment', identity.line),
    entered(
      'Drawing',
      [identity.drawing, identity.revision && `rev. ${identity.revision}`].filter(Boolean).join(' '),
    ),
    entered('Test pack', identity.testPack),
    entered('Isolation boundary', identity.isolationBoundary),
    entered('Could be taken for', noneOr(confusableWith?.map(({ tag }) => tag) ?? null)),
    entered('Bolts hold the pressure in', yesNo(retainsPressure(data.bolting))),
  ];
}

const noneOr = (tags: readonly string[] | null) =>
  tags === null ? null : tags.length === 0 ? 'none' : tags.join(', ');

const yesNo = (value: boolean | null) => (value === null ? null : value ? 'yes' : 'no');

function strengthLines(bolting: JointData['bolting']): JointLine[] {
  return [
    entered('Tensile strength, stud', asTyped(bolting.tensileStrength)),
    entered('Nut grade', bolting.nutGrade),
    entered('Tensile strength, nut', asTyped(bolting.nutTensileStrength)),
  ];
}

function gasketLines(gasket: GasketData, at: number): JointLine[] {
  const line = (name: string, text: string | null) => entered(name, text, gasket.source || 'joint data');
  const contact =
    gasket.kind === 'ring joint'
      ? [
          line('Pitch diameter, P', asTyped(gasket.pitchDiameter)),
          line('Ring width, A', asTyped(gasket.ringWidth)),
        ]
      : [
          line('Contact, inside', asTyped(gasket.contactInside)),
          line('Contact, outside', asTyped(gasket.contactOutside)),
        ];
  return [
    ...(at === 0 ? [] : [line('Type', gasket.type), line('Thickness', asTyped(gasket.thickness))]),
    line('Kind', gasket.kind),
    ...contact,
    line('Partition bars, area', asTyped(gasket.partitionArea)),
    line('Part of it counted', asTyped(gasket.partitionShare)),
    line('Type in the code’s table', gasket.codeType),
    line('Factor m', asTyped(gasket.factorM)),
    line('Seating stress y', asTyped(gasket.stressY)),
    line('Least when seating', asTyped(gasket.seatingStress)),
    line('Least in operation', asTyped(gasket.operatingStress)),
    line('Highest stress', asTyped(gasket.stressMax)),
    line('Target stress', asTyped(gasket.targetStress)),
    line('Left in operation', asTyped(gasket.retainedOperating)),
    line('Left at the test', asTyped(gasket.retainedTest)),
    line('Rotation it stands', asTyped(gasket.rotationMax)),
    line('Expansion', asTyped(gasket.expansion)),
    line('Batch', gasket.batch),
  ];
}

function pressureLines({ pressures, flangeMaterial }: JointData): JointLine[] {
  const source = pressures.source || 'joint data';
  return [
    ...PRESSURE_CASES.flatMap((each) => [
      entered(`Pressure, ${each}`, asTyped(pressures[each].pressure), source),
      entered(`Temperature, ${each}`, asTyped(pressures[each].temperature), source),
    ]),
    entered('Flange material', flangeMaterial),
  ];
}

function hotLines({ hot }: JointData): JointLine[] {
  const line = (name: string, text: string | null) => entered(name, text, hot.source || 'joint data');
  return [
    line('Temperature at assembly', asTyped(hot.assemblyTemperature)),
    line('Stud temperature', asTyped(hot.boltTemperature)),
    line('Flange temperature', asTyped(hot.flangeTemperature)),
    line('Expansion, stud', asTyped(hot.boltExpansion)),
    line('Expansion, flange', asTyped(hot.flangeExpansion)),
    line('Modulus, assembly', asTyped(hot.boltModulus)),
    line('Modulus, hot', asTyped(hot.boltModulusHot)),
    line('Yield strength, hot', asTyped(hot.boltYieldHot)),
    line('Joint stiffness', asTyped(hot.jointStiffness)),
  ];
}

function retighteningLines({ retightening }: JointData): JointLine[] {
  const { procedure, from, to, gasketExcluded } = retightening;
  return [
    entered('Procedure of the site', procedure),
    entered('Stud temperature, from', asTyped(from)),
    entered('Stud temperature, to', asTyped(to)),
    entered('Gasket excluded', yesNo(gasketExcluded)),
  ];
}

function boltSetLines(set: JointData['boltSets'][number]): JointLine[] {
  const { bolting, limits } = set;
  return [
    entered('Studs', bolting.count === null ? null : String(bolting.count)),
    entered('Thread', bolting.thread),
    entered('Bolt circle', asTyped(bolting.circle)),
    entered('Stud grade', bolting.grade),
    entered('Stud length', asTyped(bolting.studLength)),
    entered('Grip length', asTyped(bolting.grip)),
    entered('Hold the pressure in', yesNo(retainsPressure(bolting))),
    entered('Gap to hub or pipe', asTyped(set.space.radialGap)),
    entered('Free distance along the stud', asTyped(set.space.axialGap ?? null)),
    ...(set.lubricant === null ? [entered('Lubricant', 'as the joint')] : [lubricantLine(set)]),
    entered('Target', targetText(set), set.target?.basis),
    entered('Bolt stress limit', limitText(limits.boltStressMax, set), limits.source),
    entered('Least bolt stress', limitText(limits.boltStressMin, set), limits.source),
    entered('Flange limit', asTyped(limits.flangeBoltStressMax), limits.source),
  ];
}
