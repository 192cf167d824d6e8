import {
  type CodeMinimum,
  codeBoltArea,
  codeMinimum,
  codeSeatingLoad,
} from '../../core/joint/code-minimum.ts';
import { endForce } from '../../core/joint/hydrostatic.ts';
import { toSI } from '../../core/units/units.ts';
import { known } from './known.ts';
import { type Loose, rowsOf, type TruthRow } from './row.ts';

const INCH = 0.0254;
const LBF = toSI(1, 'lbf');
const PSI = LBF / INCH ** 2;
/** 200 psi and a static head of 0.953 psi; the sheet shows 201.0. */
const PRESSURE = 200.953 * PSI;

const flange = (): CodeMinimum =>
  known(
    codeMinimum(
      { kind: 'flat ring or spiral wound', outside: 12.125 * INCH, inside: 10.75 * INCH },
      PRESSURE,
      1,
      200 * PSI,
      8,
    ),
  );
const required = () => known(codeBoltArea(flange(), 25000 * PSI, 25000 * PSI));

const sample = rowsOf('vessel-sample');
const PLACE = 'pp. 16–18, 10 in custom flange';
const rounded = (tolerance: number): Loose => ({
  tolerance,
  why: 'the sheet takes 0.785 for π/4 and 3.14 for π (−0.05 %)',
});

export const VESSEL_SAMPLE_ROWS: readonly TruthRow[] = [
  sample(PLACE, 'basic seating width, in', '0.344', () => flange().basic / INCH),
  sample(PLACE, 'effective width, in', '0.293', () => flange().effective / INCH),
  sample(PLACE, 'reaction diameter, in', '11.539', () => flange().reactionDiameter / INCH),
  sample(PLACE, 'end force H, lbf', '21003', () => flange().endForce / LBF, rounded(15)),
  sample(PLACE, 'gasket force Hp, lbf', '4269', () => flange().gasketForce / LBF, rounded(3)),
  sample(PLACE, 'operating load Wm1, lbf', '25272', () => flange().Wm1 / LBF, rounded(15)),
  sample(PLACE, 'seating load Wm2, lbf', '2125', () => flange().Wm2 / LBF, rounded(2)),
  sample(PLACE, 'required bolt area, in²', '1.011', () => required() / INCH ** 2),
  sample(
    PLACE,
    'flange load at seating, lbf',
    '33436',
    () => known(codeSeatingLoad(required(), 8 * 0.208 * INCH ** 2, 25000 * PSI)) / LBF,
    rounded(10),
  ),
  sample(
    PLACE,
    'end force on the bore, lbf',
    '18239',
    () => known(endForce(10.75 * INCH, PRESSURE, 8)).force / LBF,
    rounded(12),
  ),
];
