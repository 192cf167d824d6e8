import {
  loadByNutAdvance,
  loadFactor,
  loadInService,
  nutAngle,
  stretch,
} from '../../core/bolting/stiffness.ts';
import { hotLoad } from '../../core/joint/expansion.ts';
import { endForce } from '../../core/joint/hydrostatic.ts';
import { likeMembersStiffness, rodStiffness, seriesStiffness } from '../../core/joint/member-stiffness.ts';
import { toSI } from '../../core/units/units.ts';
import { known } from './known.ts';
import { row as anyRow, type Loose, type TruthRow } from './row.ts';
import type { SourceId } from './sources.ts';

const INCH = 0.0254;
const LBF = toSI(1, 'lbf');
const PSI = LBF / INCH ** 2;
const MM = 0.001;
const MPA = 1e6;

const SHIGLEY = 'shigley';
const WENTZELL = 'wentzell';
const JINDAL = 'jindal';
const BHAVIKATTI_MOS = 'bhavikatti-mos';
const BHAVIKATTI_SOM = 'bhavikatti-som';
const SARKAR = 'sarkar-som';
const HIBBELER = 'hibbeler';
const BEER = 'beer-mom';

function row(
  what: string,
  source: SourceId,
  place: string,
  printed: string,
  computed: () => number,
  loose?: Loose,
): TruthRow {
  return anyRow('published', what, source, place, printed, computed, loose);
}

const circle = (diameter: number) => (Math.PI / 4) * diameter ** 2;
const ring = (outside: number, inside: number) => circle(outside) - circle(inside);

/** Bolt in a tube, tightened by an advance of the nut: stress in bolt and tube, MPa. */
function boltInTube(
  advance: number,
  bolt: readonly [number, number],
  tube: readonly [number, number],
  length: number,
) {
  const kb = known(rodStiffness(bolt[0], bolt[1], length));
  const kt = known(rodStiffness(tube[0], tube[1], length));
  const load = known(loadByNutAdvance(advance, kb, kt));
  return { bolt: load / bolt[0] / MPA, tube: load / tube[0] / MPA };
}

const copperTube600 = () =>
  boltInTube(0.5 * MM, [circle(20 * MM), 200e9], [ring(40 * MM, 28 * MM), 120e9], 600 * MM);
const copperTube500 = () =>
  boltInTube(0.5 * MM, [circle(16 * MM), 200e9], [ring(30 * MM, 20 * MM), 120e9], 500 * MM);
const aluminiumTube = () => boltInTube(1 * MM, [500e-6, 200e9], [1000e-6, 80e9], 1);

/** Jindal's five M16 of a gasketed cylinder head: share of the outside load that a bolt carries. */
function gasketedHead(): number {
  const kb = known(rodStiffness(circle(16 * MM), 207e9, 40 * MM));
  const members = known(
    likeMembersStiffness({
      modulus: 90e9,
      hole: 16 * MM,
      face: 24 * MM,
      thickness: 40 * MM,
      halfAngle: Math.PI / 4,
    }),
  );
  const gasket = known(rodStiffness(ring(68 * MM, 16 * MM), 480e6, 4 * MM));
  return known(loadFactor(kb, known(seriesStiffness([members, gasket]))));
}

export const STIFFNESS_ROWS: readonly TruthRow[] = [
  row('part of the outside load on the bolt, C', SHIGLEY, 'Example 8-3, p. 439', '0.320', () =>
    known(loadFactor(6.5, 13.8)),
  ),
  row(
    'bolt stress in service, 3/4-16 UNF, kpsi',
    SHIGLEY,
    'Example 8-3, p. 439',
    '72.17',
    () => known(loadInService(25, 6, 0.32)) / 0.373,
  ),
  row('turn of the nut for a preload, 3/4-10, degrees', WENTZELL, 'Example 6.2, p. 121', '43.35', () => {
    const load = 0.85 * 0.334 * 85000 * LBF;
    const sections = [{ length: 5 * INCH, area: 0.334 * INCH ** 2 }];
    return known(nutAngle(known(stretch(load, sections, 30e6 * PSI)).elongation, INCH / 10));
  }),
  row('load of ten studs under pressure, lbf', WENTZELL, 'Example 6.4, part 2, p. 124', '1186593.41', () => {
    const studs = 10 * known(rodStiffness(1.073 * INCH ** 2, 30e6 * PSI, 6 * INCH));
    const flange = known(rodStiffness(50 * INCH ** 2, 30e6 * PSI, 6 * INCH));
    const outside = known(endForce(20 * INCH, 500 * PSI, 10)).force;
    const preload = 10 * 0.9 * 120000 * 1.073 * LBF;
    return known(loadInService(preload, outside, known(loadFactor(studs, flange)))) / LBF;
  }),
  row('bolt stress after an outside load, MPa', JINDAL, 'Example 9-4, p. 267', '123.28', () => {
    const bolt = known(rodStiffness(circle(20 * MM), 205e9, 84 * MM));
    const members = known(
      likeMembersStiffness({
        modulus: 105e9,
        hole: 20 * MM,
        face: 30 * MM,
        thickness: 80 * MM,
        halfAngle: Math.PI / 4,
      }),
    );
    const preload = 105 * 245;
    // The book adds the whole share to the preload, although its joint has parted by then.
    return (preload + known(loadFactor(bolt, members)) * 20000) / 245;
  }),
  row(
    'stress of an M20 with a share of 0.35, MPa',
    JINDAL,
    'Example 9-6, p. 269',
    '532.65',
    () => known(loadInService(120e3, 30e3, 0.35)) / 245,
  ),
  row(
    'bolt stiffness, kN/mm',
    JINDAL,
    'Example 5-5, p. 141',
    '1546.253',
    () => known(rodStiffness(circle(15 * MM), 210e9, 24 * MM)) / 1e6,
  ),
  row(
    'gasket stiffness, kN/mm',
    JINDAL,
    'Example 5-5, p. 141',
    '84.823',
    () => known(rodStiffness(ring(30 * MM, 15 * MM), 480e6, 3 * MM)) / 1e6,
  ),
  row(
    'pressure that uses up five M16 of a gasketed joint, MPa',
    JINDAL,
    'Example 31-2, p. 816',
    '6.922',
    () => {
      const room = (157 * 600) / 2 - 0.75 * ((157 * 600) / 2);
      const perMpa = known(endForce(120 * MM, MPA, 5)).perBolt;
      return room / gasketedHead() / perMpa;
    },
  ),
  row(
    'bolt stress after a quarter turn, copper tube 600 mm, MPa',
    BHAVIKATTI_MOS,
    'Example 8.23, p. 268',
    '91.73',
    () => copperTube600().bolt,
  ),
  row('tube stress, same, MPa', BHAVIKATTI_MOS, 'Example 8.23, p. 268', '44.96', () => copperTube600().tube),
  row(
    'bolt stress after a quarter turn, copper tube 500 mm, MPa',
    BHAVIKATTI_SOM,
    'Example 2.26, p. 37',
    '107.91',
    () => copperTube500().bolt,
  ),
  row('tube stress, same, MPa', BHAVIKATTI_SOM, 'Example 2.26, p. 37', '55.25', () => copperTube500().tube),
  row(
    'bolt stress after a nut advance of 1/1000, aluminium tube, MPa',
    SARKAR,
    'Problem 3.13, p. 62',
    '88.89',
    () => aluminiumTube().bolt,
  ),
  row('tube stress, same, MPa', SARKAR, 'Problem 3.13, p. 62', '44.44', () => aluminiumTube().tube),
  row(
    'rod stress after a quarter turn of two nuts, ksi',
    BEER,
    'Sample Problem 2.2, p. 71',
    '10.533169',
    () => {
      const bolt = known(rodStiffness(circle(0.75 * INCH), 29e6 * PSI, 18 * INCH));
      // One rod between two bolts: each bolt has half of the rod's stiffness to itself.
      const rod = known(rodStiffness(circle(1.5 * INCH), 10.6e6 * PSI, 12 * INCH)) / 2;
      return (2 * known(loadByNutAdvance(0.025 * INCH, bolt, rod))) / circle(1.5 * INCH) / (1000 * PSI);
    },
  ),
  row('load a bolt gains from a hot aluminium sleeve, kN', HIBBELER, 'Example 4.12, p. 154', '20.3', () => {
    const bolt = known(rodStiffness(400e-6, 200e9, 0.15));
    const sleeve = known(rodStiffness(600e-6, 73.1e9, 0.15));
    const hot = known(
      hotLoad(
        0,
        { name: 'the stud', length: 0.15, expansion: 12e-6, rise: 65 },
        [{ name: 'the sleeve', length: 0.15, expansion: 23e-6, rise: 65 }],
        { boltCold: bolt, boltHot: bolt, joint: sleeve },
      ),
    );
    return (hot.hotLoad ?? Number.NaN) / 1000;
  }),
  row(
    'growth of a stud at 370.46 °F above assembly, 0.00001 in',
    WENTZELL,
    'Example 6.3, p. 122',
    '1204',
    () => {
      const rise = (370.46 * 5) / 9;
      const hot = known(
        hotLoad(
          0,
          { name: 'the stud', length: 5 * INCH, expansion: 6.5e-6 * 1.8, rise: 0 },
          [{ name: 'the parts', length: 5 * INCH, expansion: 6.5e-6 * 1.8, rise }],
          { boltCold: 1, boltHot: 1, joint: null },
        ),
      );
      return (hot.difference / INCH) * 1e5;
    },
  ),
];
