import { nutProofLoad } from '../../core/bolting/strip.ts';
import { findThread } from '../../core/bolting/thread.ts';
import { threadLimits } from '../../core/bolting/thread-limits.ts';
import { codeBoltArea, codeMinimum, codeSeatingLoad, effectiveWidth } from '../../core/joint/code-minimum.ts';
import type { ComponentData } from '../../core/joint/component-checks.ts';
import { assemblyTorque, selectBoltStress } from '../../core/joint/component-limits.ts';
import { ringArea } from '../../core/joint/gasket-area.ts';
import { endForce } from '../../core/joint/hydrostatic.ts';
import { toSI } from '../../core/units/units.ts';
import { known } from './known.ts';
import { row, type TruthRow } from './row.ts';

const INCH = 0.0254;
const MM = 0.001;
const MPA = 1e6;
const LBF = toSI(1, 'lbf');
const PSI = LBF / INCH ** 2;

const SHEET = 'pcc-1-sheet';
const PRINTOUT = 'vessel-printout';
const RING_SHEET = 'ring-joint-sheet';
const BLOG = 'vessel-blog';
const ISO_898_2 = 'iso-898-2';
const ISO_965 = 'iso-965-1';

/** The sheet's joint. Its own step 3 compares Sb,min with the load of step 1; that printed step is left out. */
const SHEET_JOINT: ComponentData = {
  boltCount: 24,
  boltRootArea: 217.051e-6,
  gasketArea: known(ringArea(576 * MM, 550 * MM)),
  gasketInside: 550 * MM,
  gasketTarget: 206.842 * MPA,
  gasketSeating: 86.18 * MPA,
  gasketOperating: 41.3684 * MPA,
  gasketMax: 275.789 * MPA,
  boltStressMax: 517.105 * MPA,
  boltStressMin: 241.316 * MPA,
  flangeStressMax: 507 * MPA,
  flangeRotation: 0.39,
  gasketRotation: 1,
  cases: [{ name: 'design', pressure: 1e6, retained: 0.7 }],
};

const sheetCheck = (step: number) => () =>
  (selectBoltStress(SHEET_JOINT).checks.find((check) => check.step === step)?.limit ?? Number.NaN) / MPA;
const sheetStep = (step: number) => () =>
  (selectBoltStress(SHEET_JOINT).steps.find((one) => one.step === step)?.selected ?? Number.NaN) / MPA;

const ringJoint = () =>
  known(
    codeMinimum(
      { kind: 'ring joint', pitchDiameter: 9 * INCH, ringWidth: 0.733 * INCH },
      12038 * PSI,
      5.5,
      18000 * PSI,
      16,
    ),
  );
const ringArea2 = () => known(codeBoltArea(ringJoint(), 87150 * PSI, 87150 * PSI));

const flatRing = () =>
  known(
    codeMinimum(
      { kind: 'flat ring or spiral wound', outside: 12.5 * INCH, inside: 10.5 * INCH },
      250 * PSI,
      3,
      10000 * PSI,
      12,
    ),
  );
const APPENDIX_2 = 'asme-viii-appendix-2';
const BY_HAND = 'relations worked with a pocket calculator';

const proof = (size: string, stress: number, load: number) =>
  row(
    'published table cell',
    `proof load of an ISO 898-2 nut ${size} at ${stress} MPa, N`,
    ISO_898_2,
    `table of proof loads, ${size}`,
    String(load),
    () => {
      const thread = findThread(size);
      return thread === null ? 'no thread' : known(nutProofLoad(stress * MPA, thread));
    },
    {
      tolerance: 0.005 * load,
      step: 100,
      why: 'the standard rounds the stress area to three figures and the load to four',
    },
  );

const minorTolerance = (size: string, printed: number) =>
  row(
    'published table cell',
    `tolerance of the nut's minor diameter ${size}, µm`,
    ISO_965,
    'table 3, class 6H',
    String(printed),
    () => {
      const thread = findThread(size);
      const limits = thread === null ? null : threadLimits(thread);
      if (thread === null || limits === null) return 'no limits';
      return (limits.nutMinorMax - (thread.diameter - 1.082532 * thread.pitch)) * 1e6;
    },
    {
      tolerance: 0.03 * printed,
      why: 'the table rounds the relation to preferred numbers of the series R 40, up to 3 %',
    },
  );

const handbook = (what: string, printed: string, value: () => number | undefined) =>
  row(
    'from memory',
    `1-8 UNC, ${what}, in`,
    'machinerys-handbook',
    'table of limits of size, classes 2A and 2B',
    printed,
    () => (value() ?? Number.NaN) / INCH,
  );
const unc1 = () => {
  const thread = findThread('1-8 UNC');
  return thread === null ? null : threadLimits(thread);
};

export const GASKET_ROWS: readonly TruthRow[] = [
  row(
    'published',
    'gasket area, mm²',
    SHEET,
    'input block',
    '22993.317',
    () => known(ringArea(576 * MM, 550 * MM)) * 1e6,
  ),
  row(
    'published',
    'bolt stress of the gasket target, MPa',
    SHEET,
    'equation O-1',
    '912.99272',
    sheetStep(1),
    {
      tolerance: 5e-4,
      why: 'the sheet holds more digits of its inputs than it prints',
    },
  ),
  row('published', 'after the largest bolt stress, MPa', SHEET, 'equation O-4', '517.105', sheetStep(2)),
  row(
    'published',
    'after the largest stress by the flange, MPa',
    SHEET,
    'equation O-6',
    '507.000',
    sheetStep(4),
  ),
  row('published', 'least bolt stress for seating, MPa', SHEET, 'equation O-7', '380.395', sheetCheck(5), {
    tolerance: 5e-3,
    why: 'the sheet holds more digits of the seating stress than it prints (86.18)',
  }),
  row('published', 'least bolt stress in operation, MPa', SHEET, 'equation O-8', '326.010', sheetCheck(6)),
  row(
    'published',
    'largest bolt stress for the gasket, MPa',
    SHEET,
    'equation O-9',
    '1217.3222',
    sheetCheck(7),
    {
      tolerance: 5e-3,
      why: 'the sheet holds more digits of the gasket stress than it prints (275.789)',
    },
  ),
  row('published', 'largest bolt stress by rotation, MPa', SHEET, 'equation O-10', '1300.000', sheetCheck(8)),
  row(
    'published',
    'torque at 912.993 MPa and K 0.2, N·m',
    SHEET,
    'equation O-2',
    '792.66393',
    () => known(assemblyTorque(912.99272 * MPA, 0.2, 217.051e-6, 20 * MM)),
    {
      tolerance: 5e-4,
      why: 'the sheet holds more digits of its inputs than it prints; its unit label is a slip',
    },
  ),
  row(
    'published',
    'effective width of b0 = 18 mm, mm',
    PRINTOUT,
    'effective gasket width',
    '10.691',
    () => known(effectiveWidth(18 * MM)) / MM,
    { tolerance: 0.001, why: 'the printout truncates its factor' },
  ),
  row(
    'published',
    'required bolt area of a ring joint (b0 = w/8), in²',
    RING_SHEET,
    'Am',
    '12.71726',
    () => ringArea2() / INCH ** 2,
    { tolerance: 0.007, why: 'the sheet takes 3.14 for π' },
  ),
  row(
    'published',
    'bolt load at seating of a ring joint, lbf',
    RING_SHEET,
    'W',
    '1546967',
    () => known(codeSeatingLoad(ringArea2(), 22.784 * INCH ** 2, 87150 * PSI)) / LBF,
    { tolerance: 300, why: 'the sheet takes 3.14 for π' },
  ),
  row(
    'published',
    'end force at G = 11.5 in, lbf',
    BLOG,
    'H',
    '25967',
    () => known(endForce(11.5 * INCH, 250 * PSI, 12)).force / LBF,
  ),
  row('computed', 'effective width, in', APPENDIX_2, BY_HAND, '0.3536', () => flatRing().effective / INCH),
  row(
    'computed',
    'reaction diameter, in',
    APPENDIX_2,
    BY_HAND,
    '11.793',
    () => flatRing().reactionDiameter / INCH,
  ),
  row('computed', 'end force H, lbf', APPENDIX_2, BY_HAND, '27307', () => flatRing().endForce / LBF, {
    tolerance: 2,
    why: 'factor 2.52 of the metric form against 0.5 of the inch form',
  }),
  row('computed', 'operating load Wm1, lbf', APPENDIX_2, BY_HAND, '46955', () => flatRing().Wm1 / LBF, {
    tolerance: 5,
    why: 'factor 2.52 of the metric form against 0.5 of the inch form',
  }),
  row('computed', 'seating load Wm2, lbf', APPENDIX_2, BY_HAND, '130986', () => flatRing().Wm2 / LBF, {
    tolerance: 20,
    why: 'factor 2.52 of the metric form against 0.5 of the inch form',
  }),
  proof('M20', 920, 225400),
  proof('M24', 920, 324800),
  proof('M30', 920, 516100),
  proof('M36', 920, 751600),
  proof('M20', 1060, 259700),
  proof('M24', 1060, 374200),
  proof('M30', 1060, 594700),
  proof('M36', 1060, 866000),
  minorTolerance('M8', 265),
  minorTolerance('M10', 300),
  minorTolerance('M12', 335),
  minorTolerance('M16', 375),
  minorTolerance('M20', 450),
  minorTolerance('M24', 500),
  handbook('least major diameter of the stud', '0.9830', () => unc1()?.majorMin),
  handbook('least pitch diameter of the stud', '0.9100', () => unc1()?.pitchMin),
  handbook('largest minor diameter of the nut', '0.890', () => unc1()?.nutMinorMax),
  handbook('largest pitch diameter of the nut', '0.9276', () => unc1()?.nutPitchMax),
];
