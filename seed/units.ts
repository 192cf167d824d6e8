/** What flows somewhere, how hot, and what it is bolted with. Temperatures in °C; all of it invented. */
export interface Service {
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly ratings: readonly (readonly [rating: string, weight: number])[];
  readonly grade: string;
  readonly equipment: readonly [string, ...string[]];
}

export interface PlantUnit {
  readonly name: string;
  /** First part of its joints' tags. */
  readonly code: string;
  readonly joints: number;
  readonly standard: 'ASME B16.5' | 'EN 1092-1';
  readonly services: readonly [Service, ...Service[]];
}

const B7 = 'ASTM A193 B7';
const B16 = 'ASTM A193 B16';
const B8M = 'ASTM A193 B8M class 2';

const low = [
  ['150', 6],
  ['300', 3],
] as const;
const middle = [
  ['150', 2],
  ['300', 6],
  ['600', 2],
] as const;
const high = [
  ['600', 6],
  ['900', 3],
  ['1500', 1],
] as const;

function service(
  name: string,
  temperatures: readonly [low: number, high: number],
  ratings: Service['ratings'],
  equipment: Service['equipment'],
  grade: string = B7,
): Service {
  return { name, low: temperatures[0], high: temperatures[1], ratings, equipment, grade };
}

/** Plant units of the invented site. */
export const PLANT_UNITS: readonly PlantUnit[] = [
  {
    name: 'Unit 100 Crude distillation',
    code: '100',
    joints: 56,
    standard: 'ASME B16.5',
    services: [
      service('crude oil', [30, 110], middle, [
        'pump P-101',
        'pump P-102',
        'desalter D-101',
        'exchanger E-104',
      ]),
      service('hot residue', [290, 355], middle, ['pump P-110', 'exchanger E-112', 'column C-101']),
      service('naphtha vapour', [110, 160], low, ['column C-101', 'condenser E-120', 'drum D-120']),
    ],
  },
  {
    name: 'Unit 200 Hydrotreater',
    code: '200',
    joints: 52,
    standard: 'ASME B16.5',
    services: [
      service(
        'reactor effluent',
        [340, 425],
        high,
        ['reactor R-201', 'exchanger E-201', 'exchanger E-202'],
        B16,
      ),
      service('hydrogen recycle', [60, 115], high, ['compressor K-201', 'drum D-205', 'heater H-201']),
      service('treated gas oil', [130, 240], middle, ['stripper C-210', 'exchanger E-215', 'pump P-210']),
    ],
  },
  {
    name: 'Unit 300 Reformer',
    code: '300',
    joints: 40,
    standard: 'ASME B16.5',
    services: [
      service('reformate', [80, 190], middle, [
        'exchanger E-301',
        'exchanger E-302',
        'drum D-310',
        'pump P-305',
      ]),
      service('reactor inlet', [440, 490], middle, ['heater H-301', 'reactor R-301', 'reactor R-302'], B16),
    ],
  },
  {
    name: 'Unit 400 Steam and condensate',
    code: '400',
    joints: 48,
    standard: 'ASME B16.5',
    services: [
      service(
        'high-pressure steam',
        [360, 410],
        high,
        ['header S-40', 'turbine T-401', 'valve station V-410'],
        B16,
      ),
      service('medium-pressure steam', [200, 260], middle, [
        'header S-18',
        'exchanger E-410',
        'reducing station V-420',
      ]),
      service('condensate', [70, 115], low, ['drum D-430', 'pump P-430', 'pump P-431']),
    ],
  },
  {
    name: 'Unit 500 Amine treating',
    code: '500',
    joints: 36,
    standard: 'ASME B16.5',
    services: [
      service('rich amine', [50, 70], low, ['absorber C-501', 'flash drum D-501', 'exchanger E-501'], B8M),
      service('lean amine', [95, 120], low, ['regenerator C-510', 'reboiler E-510', 'pump P-510'], B8M),
    ],
  },
  {
    name: 'Unit 700 Tank farm and loading',
    code: '700',
    joints: 44,
    standard: 'ASME B16.5',
    services: [
      service('gasoline', [5, 35], low, ['tank T-701', 'tank T-702', 'pump P-701', 'loading arm L-3']),
      service('gas oil', [10, 60], low, ['tank T-710', 'tank T-711', 'pump P-712', 'meter M-710']),
    ],
  },
  {
    name: 'Unit 800 Cooling water',
    code: '800',
    joints: 26,
    standard: 'EN 1092-1',
    services: [
      service(
        'cooling water',
        [12, 40],
        [
          ['10', 4],
          ['16', 6],
          ['40', 1],
        ],
        ['pump P-801', 'pump P-802', 'cooling tower CT-1', 'header W-80'],
        'ISO 898-1 8.8',
      ),
    ],
  },
];
