import { standardRow } from '../core/joint/resolve.ts';
import { MEASURED_NUT_FACTOR, plantedJoints } from './faults.ts';
import { oneSourceJoints } from './one-source.ts';
import { type Random, randomStream } from './random.ts';
import type { DemoJoint } from './types.ts';
import { PLANT_UNITS, type PlantUnit, type Service } from './units.ts';

/** Share of joints by size, in percent, as design practice guesses it for a process plant. */
const NPS_MIX = [
  ['1', 10],
  ['1 1/2', 10],
  ['2', 15],
  ['3', 14],
  ['4', 14],
  ['6', 10],
  ['8', 8],
  ['10', 5],
  ['12', 5],
  ['14', 2],
  ['16', 2],
  ['20', 1.5],
  ['24', 1.5],
] as const;
const DN_MIX = [
  ['50', 10],
  ['80', 18],
  ['100', 20],
  ['150', 16],
  ['200', 14],
  ['250', 10],
  ['300', 6],
  ['400', 4],
] as const;

const SIDES = [
  'upstream side of isolation valve',
  'downstream side of isolation valve',
  'inlet',
  'outlet',
  'vent',
  'drain',
] as const;

/** Large joints with a bolt circle of their own, which no flange standard fills in. */
const CUSTOM_JOINTS = [
  [
    'J-200-801',
    'Unit 200 Hydrotreater',
    'Channel girth flange, exchanger E-201',
    'reactor effluent',
    395,
    36,
    '1-1/2-8 8UN',
    1180,
    'ASTM A193 B16',
  ],
  [
    'J-200-802',
    'Unit 200 Hydrotreater',
    'Channel girth flange, exchanger E-202',
    'reactor effluent',
    402,
    36,
    '1-1/2-8 8UN',
    1180,
    'ASTM A193 B16',
  ],
  [
    'J-300-801',
    'Unit 300 Reformer',
    'Shell girth flange, exchanger E-302',
    'reformate',
    165,
    40,
    '1-8 UNC',
    960,
    'ASTM A193 B7',
  ],
  [
    'J-100-801',
    'Unit 100 Crude distillation',
    'Manway cover, column C-101',
    'naphtha vapour',
    140,
    20,
    '1-1/4-8 8UN',
    690,
    'ASTM A193 B7',
  ],
  [
    'J-100-802',
    'Unit 100 Crude distillation',
    'Manway cover, desalter D-101',
    'crude oil',
    95,
    20,
    '1-1/4-8 8UN',
    690,
    'ASTM A193 B7',
  ],
  [
    'J-500-801',
    'Unit 500 Amine treating',
    'Manway cover, regenerator C-510',
    'lean amine',
    112,
    20,
    '1-8 UNC',
    660,
    'ASTM A193 B7',
  ],
  [
    'J-700-801',
    'Unit 700 Tank farm and loading',
    'Shell manway, tank T-701',
    'gasoline',
    25,
    28,
    '3/4-10 UNC',
    760,
    'ASTM A193 B7',
  ],
] as const;

/** Every joint of the plant: ordinary ones by unit, large ones, and those of the planted faults. */
export function demoJoints(seed: number): DemoJoint[] {
  const ordinary = PLANT_UNITS.flatMap((unit) => unitJoints(unit, randomStream(seed, `joints ${unit.code}`)));
  const model = ordinary.find(({ flange, target }) => flange.kind === 'standard' && target !== null);
  if (model === undefined) throw new Error('the mix gave no ordinary joint');
  const usual = { ...model, lubricant: antiSeize(), target: halfYield(), gasket: spiralWound() };
  return [...ordinary, ...customJoints(usual), ...plantedJoints(usual), ...oneSourceJoints(usual)];
}

function unitJoints(unit: PlantUnit, random: Random): DemoJoint[] {
  return Array.from({ length: unit.joints }, (_, index) => {
    const service = random.pick(unit.services);
    const tag = `J-${unit.code}-${String(index + 1).padStart(3, '0')}`;
    return unit.standard === 'EN 1092-1'
      ? europeanJoint(tag, unit, service, random)
      : asmeJoint(tag, unit, service, random);
  });
}

function common(tag: string, unit: PlantUnit, service: Service, random: Random) {
  const metres = random.whole(0, 24);
  return {
    tag,
    unit: unit.name,
    location: `${random.pick(service.equipment)}, ${random.pick(SIDES)}, elevation +${metres} m`,
    service: service.name,
    serviceTemperature: { text: String(random.whole(service.low, service.high)), unit: 'degC' },
    limits: limits(random),
    space: { radialGap: null },
    remarks: 'Invented demo data.',
  } as const;
}

function asmeJoint(tag: string, unit: PlantUnit, service: Service, random: Random): DemoJoint {
  const flange = asmeFlange(service, random);
  return {
    ...common(tag, unit, service, random),
    flange,
    bolting: fromStandard(service.grade),
    gasket:
      flange.facing === 'ring joint'
        ? { type: 'metal ring, octagonal', thickness: null }
        : gasket(service, random),
    lubricant: lubricant(random),
    target: random.chance(0.85) ? halfYield() : stressTarget(),
  };
}

/** Draws until the standard has a row of that size and class with one undisputed stud size. */
function asmeFlange(service: Service, random: Random) {
  for (;;) {
    const rating = random.weighted(service.ratings);
    const flange = {
      kind: 'standard',
      standard: 'ASME B16.5',
      size: random.weighted(NPS_MIX),
      rating,
      facing: Number(rating) >= 900 && random.chance(0.6) ? 'ring joint' : 'raised face',
    } as const;
    const row = standardRow({ flange });
    if (row?.studIn !== null && row?.studIn !== undefined && row.status !== 'STANDIN') return flange;
  }
}

function europeanJoint(tag: string, unit: PlantUnit, service: Service, random: Random): DemoJoint {
  return {
    ...common(tag, unit, service, random),
    flange: {
      kind: 'standard',
      standard: 'EN 1092-1',
      size: random.weighted(DN_MIX),
      rating: random.weighted(service.ratings),
      facing: 'raised face',
    },
    bolting: { ...fromStandard(service.grade), nutSeries: 'ISO 4032' },
    gasket: { type: 'fibre sheet', thickness: { text: '2', unit: 'mm' } },
    lubricant: lubricant(random),
    target: halfYield(),
  };
}

/** Count, thread and bolt circle are left to the flange standard. */
function fromStandard(grade: string): DemoJoint['bolting'] {
  return {
    count: null,
    thread: null,
    circle: null,
    grade,
    yieldStrength: null,
    yieldOrigin: '',
    studLength: null,
    grip: null,
    nutSeries: null,
  };
}

function customJoints(usual: DemoJoint): DemoJoint[] {
  return CUSTOM_JOINTS.map(
    ([tag, unit, description, service, temperature, count, thread, circle, grade]) => ({
      ...usual,
      tag,
      unit,
      location: `${description.split(', ')[1]}, elevation +${count / 4} m`,
      service,
      serviceTemperature: { text: String(temperature), unit: 'degC' },
      flange: { kind: 'custom', description: `${description} (invented)` },
      bolting: {
        ...fromStandard(grade),
        count,
        thread,
        circle: { text: String(circle), unit: 'mm' },
        nutSeries: 'ASME B18.2.2 heavy hex',
      },
      remarks: 'Invented demo data. Bolt circle from the vessel drawing.',
    }),
  );
}

function spiralWound(): DemoJoint['gasket'] {
  return { type: 'spiral wound, inner and outer ring', thickness: { text: '4.5', unit: 'mm' } };
}

function gasket(service: Service, random: Random): DemoJoint['gasket'] {
  if (service.high > 120 || random.chance(0.5)) return spiralWound();
  return random.chance(0.7)
    ? { type: 'grooved metal with graphite layer', thickness: { text: '4', unit: 'mm' } }
    : { type: 'graphite sheet with metal insert', thickness: { text: '2', unit: 'mm' } };
}

function antiSeize(): DemoJoint['lubricant'] {
  return {
    name: 'nickel-based anti-seize',
    batch: 'N-0231',
    nutFactor: { text: MEASURED_NUT_FACTOR, unit: 'one' },
    nutFactorCv: { text: '9', unit: 'percent' },
    frictionThread: null,
    frictionBearing: null,
    evidence: 'measured',
    source: 'invented site friction test FT-03',
  };
}

function lubricant(random: Random): DemoJoint['lubricant'] {
  if (random.chance(0.75)) return antiSeize();
  if (random.chance(0.6)) {
    return {
      name: 'molybdenum disulphide paste',
      batch: 'M-0117',
      nutFactor: { text: '0.14', unit: 'one' },
      nutFactorCv: { text: '10', unit: 'percent' },
      frictionThread: null,
      frictionBearing: null,
      evidence: 'measured',
      source: 'invented site friction test FT-05',
    };
  }
  return {
    name: 'machine oil',
    batch: '',
    nutFactor: null,
    nutFactorCv: { text: '18', unit: 'percent' },
    frictionThread: { text: '0.14', unit: 'one' },
    frictionBearing: { text: '0.14', unit: 'one' },
    evidence: 'assumed',
    source: '',
  };
}

function halfYield(): DemoJoint['target'] {
  return {
    mode: 'percent of yield',
    percent: { text: '50', unit: 'percent' },
    area: 'tensile',
    basis: 'invented site procedure BP-01',
  };
}

function stressTarget(): DemoJoint['target'] {
  return {
    mode: 'bolt stress',
    stress: { text: '310', unit: 'MPa' },
    area: 'root',
    basis: 'invented site procedure BP-02',
  };
}

function limits(random: Random): DemoJoint['limits'] {
  const known = random.chance(0.6);
  return {
    boltStressMax: known ? { text: '480', unit: 'MPa' } : null,
    boltStressMin: known ? { text: '140', unit: 'MPa' } : null,
    boltStressArea: 'root',
    flangeBoltStressMax: null,
    source: known ? 'invented site procedure BP-01, table 2' : '',
  };
}
