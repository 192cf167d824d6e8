import { type HeatedPart, hotLoad } from '../../core/joint/expansion.ts';
import { rodStiffness } from '../../core/joint/member-stiffness.ts';
import { toSI } from '../../core/units/units.ts';
import { known } from './known.ts';
import { rowsOf, type TruthRow } from './row.ts';

const INCH = 0.0254;
const MM = 0.001;
const MPA = 1e6;
const PSI = toSI(1, 'psi');
/** A coefficient per °F times 1.8 is one per K; a step of 1 °F is 5/9 K. */
const PER_FAHRENHEIT = 1.8;
const FAHRENHEIT_STEP = 5 / 9;

/** A straight part, SI. */
interface Part {
  readonly area: number;
  readonly modulus: number;
  readonly expansion: number;
}

const circle = (diameter: number) => (Math.PI / 4) * diameter ** 2;
const ring = (outside: number, inside: number) => circle(outside) - circle(inside);
const stiffness = (part: Part) => known(rodStiffness(part.area, part.modulus, 1));
const heated = (name: string, part: Part, rise: number): HeatedPart => ({
  name,
  length: 1,
  expansion: part.expansion,
  rise,
});

/** Force between two parts of one length, unstressed cold, of which the second grows more, N. */
function between(stretched: Part, pushed: Part, rise: number): number {
  const hot = hotLoad(0, heated('stretched part', stretched, rise), [heated('pushed part', pushed, rise)], {
    boltCold: stiffness(stretched),
    boltHot: stiffness(stretched),
    joint: stiffness(pushed),
  });
  return known(hot).hotLoad ?? Number.NaN;
}

/** Stresses in MPa of both parts. */
function stresses(stretched: Part, pushed: Part, rise: number): { stretched: number; pushed: number } {
  const force = between(stretched, pushed, rise);
  return { stretched: force / stretched.area / MPA, pushed: force / pushed.area / MPA };
}

/**
 * Stress of a rod held at both ends by something rigid, MPa; `give` is by how much the ends let it go, as a strain. The
 * cooled rod pulls; heated by as much it is pressed by the same stress.
 */
function heldStress(rod: Part, change: number, give = 0): number {
  const ends: HeatedPart = { name: 'the ends', length: 1, expansion: -1e-4, rise: give / 1e-4 };
  const hot = hotLoad(0, heated('the rod', rod, -change), [ends], {
    boltCold: stiffness(rod),
    boltHot: stiffness(rod),
    joint: null,
  });
  return known(hot).bound / rod.area / MPA;
}

/** Growth of a free part, m. */
function growth(length: number, expansion: number, rise: number): number {
  const still: HeatedPart = { name: 'the stud', length, expansion, rise: 0 };
  const hot = hotLoad(0, still, [{ name: 'the part', length, expansion, rise }], {
    boltCold: 1,
    boltHot: 1,
    joint: null,
  });
  return known(hot).difference;
}

const steelRail: Part = { area: 1e-3, modulus: 200e9, expansion: 12e-6 };

const bhavikatti = rowsOf('bhavikatti-som');
const brassInTube = () =>
  stresses(
    { area: ring(50 * MM, 25 * MM), modulus: 200e9, expansion: 11.6e-6 },
    { area: circle(25 * MM), modulus: 100e9, expansion: 18.7e-6 },
    70,
  );
const copperOnSteel = () =>
  stresses(
    { area: 600e-6, modulus: 200e9, expansion: 12e-6 },
    { area: 400e-6, modulus: 100e9, expansion: 17e-6 },
    80,
  );

const bansal = rowsOf('bansal-som');
const bansalRod: Part = { area: circle(30 * MM), modulus: 200e9, expansion: 12e-6 };
const copperOverRod = () =>
  stresses(
    { area: circle(20 * MM), modulus: 200e9, expansion: 12e-6 },
    { area: ring(50 * MM, 40 * MM), modulus: 100e9, expansion: 18e-6 },
    50,
  );
const gunMetalInTube = () =>
  stresses(
    { area: ring(30 * MM, 25 * MM), modulus: 210e9, expansion: 12e-6 },
    { area: circle(20 * MM), modulus: 100e9, expansion: 20e-6 },
    110,
  );

const junnarkar = rowsOf('junnarkar');
const brassOverBar = () =>
  stresses(
    { area: circle(INCH), modulus: 30e6 * PSI, expansion: 0 },
    { area: 0.9817477042468103 * INCH ** 2, modulus: 14e6 * PSI, expansion: 3.8e-6 * PER_FAHRENHEIT },
    100 * FAHRENHEIT_STEP,
  );

const pytel = rowsOf('pytel');
const pytelRod: Part = { area: 1e-3, modulus: 200e9, expansion: 11.7e-6 };

const gere = rowsOf('gere');

export const EXPANSION_ROWS: readonly TruthRow[] = [
  bhavikatti(
    'Example 2.30, p. 44',
    'growth of a 12.6 m rail, mm',
    '3.02',
    () => growth(12.6, 12e-6, 20) / MM,
  ),
  bhavikatti('Example 2.30, p. 44', 'stress of a held rail, MPa', '48.0', () => heldStress(steelRail, 20)),
  bhavikatti('Example 2.30, p. 44', 'stress with a gap of 2 mm, MPa', '16.25', () =>
    heldStress(steelRail, 20, 2 / 12600),
  ),
  bhavikatti(
    'Example 2.33, p. 48',
    'steel tube with a brass bar inside, tube, MPa',
    '14.2',
    () => brassInTube().stretched,
  ),
  bhavikatti('Example 2.33, p. 48', 'the same, bar, MPa', '42.6', () => brassInTube().pushed),
  bhavikatti(
    'Example 2.34, p. 49',
    'two copper bars on steel, copper, MPa',
    '30.0',
    () => copperOnSteel().pushed,
  ),
  bhavikatti('Example 2.34, p. 49', 'the same, steel, MPa', '20.0', () => copperOnSteel().stretched),
  bansal('Problem 1.28, p. 43', 'growth of a 2 m rod, cm', '0.168', () => growth(2, 12e-6, 70) * 100),
  bansal('Problem 1.28, p. 43', 'stress of the held rod, MPa', '84', () =>
    heldStress({ ...bansalRod, modulus: 100e9 }, 70),
  ),
  bansal('Problem 1.29, p. 43', 'stress of a cooled held rod, MPa', '156', () => heldStress(bansalRod, 65)),
  bansal(
    'Problem 1.29, p. 43',
    'pull of that rod, N',
    '110269.9',
    () => heldStress(bansalRod, 65) * MPA * bansalRod.area,
  ),
  bansal('Problem 1.29, p. 43', 'stress when the ends give 1.2 mm, MPa', '108', () =>
    heldStress(bansalRod, 65, 1.2 / 5000),
  ),
  bansal(
    'Problem 1.29, p. 43',
    'pull when the ends give, N',
    '76340.7',
    () => heldStress(bansalRod, 65, 1.2 / 5000) * MPA * bansalRod.area,
  ),
  bansal(
    'Problem 1.30, p. 45',
    'copper tube over a steel rod, tube, MPa',
    '14.117',
    () => copperOverRod().pushed,
    { tolerance: 0.0007, why: 'the print is cut, not rounded' },
  ),
  bansal('Problem 1.30, p. 45', 'the same, rod, MPa', '31.76', () => copperOverRod().stretched),
  bansal(
    'Problem 1.32, p. 48',
    'gun-metal rod in a steel tube, rod, MPa',
    '51.99',
    () => gunMetalInTube().pushed,
  ),
  bansal('Problem 1.32, p. 48', 'the same, tube, MPa', '75.62', () => gunMetalInTube().stretched, {
    tolerance: 0.02,
    why: 'the book multiplies rounded values',
  }),
  junnarkar(
    'Example 13, p. 18',
    'brass tube over a steel bar, tube, psi',
    '3360',
    () => (brassOverBar().pushed * MPA) / PSI,
  ),
  junnarkar('Example 13, p. 18', 'the same, bar, psi', '4200', () => (brassOverBar().stretched * MPA) / PSI),
  pytel('Example 2.10, p. 62', 'stress of a held rod cooled by 40 °C, MPa', '93.6', () =>
    heldStress(pytelRod, 40),
  ),
  pytel('Example 2.10, p. 62', 'stress when the walls give 0.5 mm, MPa', '53.6', () =>
    heldStress(pytelRod, 40, 0.5 / 2500),
  ),
  gere(
    '2.5-7, p. 156',
    'growth of the outer parts, in',
    '0.07800',
    () => growth(24 * INCH, 6.5e-6 * PER_FAHRENHEIT, 500 * FAHRENHEIT_STEP) / INCH,
  ),
  gere('2.5-8, p. 157', 'temperature rise for 25 MPa in a sleeve on a bolt, K', '34', () => {
    const bolt: Part = { area: circle(25 * MM), modulus: 200e9, expansion: 10e-6 };
    const sleeve: Part = { area: ring(36 * MM, 26 * MM), modulus: 100e9, expansion: 21e-6 };
    return 25 / stresses(bolt, sleeve, 1).pushed;
  }),
  gere('2.5-4, p. 153', 'temperature drop that shears the bolt of a held rod, K', '24', () => {
    const rod: Part = { area: circle(15 * MM), modulus: 200e9, expansion: 12e-6 };
    const shearing = 2 * 45 * MPA * circle(12 * MM);
    return shearing / (heldStress(rod, 1) * MPA * rod.area);
  }),
];
