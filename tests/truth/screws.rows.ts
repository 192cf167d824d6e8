import { torsionalStress } from '../../core/bolting/stress.ts';
import { unifiedThread } from '../../core/bolting/thread.ts';
import { effectiveBearingDiameter, exactTorque, torqueSplit } from '../../core/bolting/torque.ts';
import { toSI } from '../../core/units/units.ts';
import { rowsOf, type TruthRow } from './row.ts';

const INCH = 0.0254;
const MM = 0.001;
const LBF = toSI(1, 'lbf');
const LBF_IN = toSI(1, 'lbf.in');
const DEGREE = Math.PI / 180;
const ACME = 14.5;

/** A power screw or bolt as the books give it. Diameters and lead in one unit of length. */
interface Screw {
  readonly load: number;
  readonly mean: number;
  readonly lead: number;
  readonly friction: number;
  /** Half of the thread angle, degrees; 0 for a square thread. */
  readonly flank?: number;
  /** Mean collar diameter with its friction. */
  readonly collar?: readonly [diameter: number, friction: number];
}

function torque(screw: Screw, direction: 1 | -1, length: number): number {
  const [collar, collarFriction] = screw.collar ?? [0, 0];
  const thread = {
    lead: screw.lead * length,
    meanDiameter: screw.mean * length,
    flankAngle: (screw.flank ?? 0) * DEGREE,
  };
  return exactTorque(screw.load, thread, collar * length, screw.friction, collarFriction, direction);
}

/** Torque that raises the load, N·m, from millimetres and newtons. */
const raise = (screw: Screw) => torque(screw, 1, MM);
/** Torque that lowers it; negative when the load runs down by itself. */
const lower = (screw: Screw) => torque(screw, -1, MM);
/** Torque that raises the load, lbf·in, from inches and pounds. */
const raiseInch = (screw: Screw) => torque({ ...screw, load: screw.load * LBF }, 1, INCH) / LBF_IN;
const lowerInch = (screw: Screw) => torque({ ...screw, load: screw.load * LBF }, -1, INCH) / LBF_IN;
/** Useful part of the work, %. */
const efficiency = (screw: Screw) => (100 * screw.load * screw.lead * MM) / (2 * Math.PI * raise(screw));
/** Load that a torque in N·m raises, kN: the relation is proportional to the load. */
const loadAt = (newtonMetres: number, screw: Omit<Screw, 'load'>) =>
  newtonMetres / raise({ ...screw, load: 1 }) / 1000;

/** Torque of a flat collar under even pressure, N·mm. */
const collarTorque = (load: number, outside: number, inside: number, friction: number) =>
  torqueSplit(
    load,
    { pitch: 0, pitchDiameter: 0 },
    effectiveBearingDiameter(outside * MM, inside * MM),
    0,
    friction,
  ).bearing * 1000;

const wentzell = rowsOf('wentzell');
const HOIST: Screw = { load: 2900, mean: 1.354, lead: 1 / 3, friction: 0.15 };
const HOIST_ACME: Screw = { load: 2900, mean: 1.375, lead: 0.25, friction: 0.15, flank: ACME };

const singh = rowsOf('singh');
const SINGH_JACK: Screw = { load: 10000, mean: 23.5, lead: 10, friction: 0.2, collar: [35, 0.15] };
const SINGH_9_2: Screw = { load: 2000, mean: 46, lead: 8, friction: 0.15, flank: ACME, collar: [75, 0.1] };
const evenCollar = (outside: number, inside: number, friction: number) =>
  [effectiveBearingDiameter(outside, inside), friction] as const;
const SINGH_9_6: Screw = {
  load: 100e3,
  mean: 43.5,
  lead: 7,
  friction: 0.2,
  collar: evenCollar(84, 21, 0.15),
};
const SINGH_9_15: Screw = {
  load: 100e3,
  mean: 36.5,
  lead: 7,
  friction: 0.15,
  collar: evenCollar(70, 20, 0.2),
};

const jindal = rowsOf('jindal');
const JINDAL_PRESS: Screw = { load: 36128.31551628262, mean: 27, lead: 12, friction: 0.15 };
const M18_MEAN = 16.46641375;

const bansal = rowsOf('bansal-em');
const BANSAL_JACK: Screw = { load: 1500, mean: 60, lead: 9, friction: 0.095 };
const BANSAL_STEEP: Screw = { load: 600, mean: 75, lead: 15, friction: 0.05 };
const COARSE_PI = 'the solution takes 3.14 for π';

const bhavikatti = rowsOf('bhavikatti-mos');
const BHAVIKATTI_JACK: Screw = { load: 6000, mean: 50, lead: 10, friction: 0.05 };

const khurmi = rowsOf('khurmi');
const KHURMI_10: Screw = { load: 25e3, mean: 50, lead: 12.5, friction: 0.13 };
const KHURMI_11: Screw = { load: 20e3, mean: 50, lead: 10, friction: 0.08 };
const KHURMI_11_COLLAR: Screw = { ...KHURMI_11, collar: [35, 0.08] };
/** Work of 17 turns, N·m. */
const work = (screw: Screw) => 2 * Math.PI * 17 * raise(screw);

const mclean = rowsOf('mclean');
const MCLEAN_JACK: Screw = { load: 4000, mean: 2, lead: 0.25, friction: 0.15 };

const bhandari = rowsOf('bhandari');
const SLUICE: Screw = { load: 7000, mean: 36.5, lead: 7, friction: 0.15, collar: [60, 0.12] };
const STRAIGHTENER: Screw = { load: 10e3, mean: 75, lead: 10, friction: 0.12, collar: [60, 0.12] };
const LEAD_SCREW: Screw = { load: 2000, mean: 48, lead: 8, friction: 0.15, flank: 15, collar: [80, 0.12] };

const beer = rowsOf('beer-vm');
const CLAMP = { mean: 10, lead: 4, friction: 0.3 };

const tayal = rowsOf('tayal');
const TAYAL_JACK: Screw = { load: 2000, mean: 50, lead: 10, friction: 0.15 };

const solutions = rowsOf('shigley-solutions');
const P8_4: Screw = { load: 6000, mean: 22.5, lead: 5, friction: 0.08, collar: [40, 0.05] };
const P8_4_THREAD: Screw = { load: 6000, mean: 22.5, lead: 5, friction: 0.08 };
const P8_4_NINTH: Screw = { load: 5000, mean: 22.5, lead: 5, friction: 0.09, collar: [45, 0.06] };
const P8_6_THREAD: Screw = { load: 2500, mean: 2.75, lead: 0.5, friction: 0.05, flank: ACME };
const P8_7_THREAD = unifiedThread(0.4375, 14);
/** Torque over clamp force of the 7/16-14 thread without a bearing face, in. */
const p8_7Arm = () =>
  exactTorque(
    1,
    { lead: P8_7_THREAD.pitch, meanDiameter: P8_7_THREAD.pitchDiameter, flankAngle: 30 * DEGREE },
    0,
    0.075,
    0,
    1,
  ) / INCH;
/** Efficiency of a square thread by its lead angle, μ 0.08. */
const byLeadAngle = (degrees: number) =>
  efficiency({ load: 1000, mean: 30, lead: Math.PI * 30 * Math.tan(degrees * DEGREE), friction: 0.08 }) / 100;

export const SCREW_ROWS: readonly TruthRow[] = [
  wentzell('Example 18.1, p. 399', 'square screw, lbf·in', '453.68', () => raiseInch(HOIST)),
  wentzell('Example 18.2, p. 400', 'efficiency of a square screw, %', '33.91', () => efficiency(HOIST)),
  wentzell('Example 18.3, p. 402', 'Acme screw, lbf·in', '428.13', () => raiseInch(HOIST_ACME)),
  singh(
    'Example 9.1, p. 256',
    'torsional stress on the core of a jack, MPa',
    '36.72',
    () => torsionalStress(raise(SINGH_JACK), 21 * MM, 'elastic') / 1e6,
  ),
  singh('Example 9.2, p. 257', 'efficiency, flank 14.5°, with collar, %', '14.76', () =>
    efficiency(SINGH_9_2),
  ),
  singh('Example 9.6, p. 267', 'collar torque, even pressure, N·mm', '441000', () =>
    collarTorque(100e3, 84, 21, 0.15),
  ),
  singh('Example 9.6, p. 267', 'whole torque, N·mm', '993064', () => raise(SINGH_9_6) * 1000),
  singh('Example 9.15, p. 279', 'collar torque, even pressure, N·mm', '496296', () =>
    collarTorque(100e3, 70, 20, 0.2),
  ),
  singh('Example 9.15, p. 279', 'whole torque, N·mm', '885014', () => raise(SINGH_9_15) * 1000),
  singh('Example 9.15, p. 279', 'efficiency with collar, %', '12.59', () => efficiency(SINGH_9_15)),
  jindal(
    'Example 9-3, p. 267',
    'nut factor of M18, μ 0.15 in the thread and 0.13 under the head',
    '0.18343',
    () =>
      raise({
        load: 1,
        mean: M18_MEAN,
        lead: 2.5,
        friction: 0.15,
        flank: 30,
        collar: [22.5, 0.13],
      }) / 0.018,
    { tolerance: 3e-5, why: 'the book rounds 1.226869 to 1.2268 in the root diameter' },
  ),
  jindal('Example 16-1, p. 450', 'square screw with collar, N·m', '110.148', () =>
    raise({ load: 20e3, mean: 27, lead: 6, friction: 0.2, collar: [24, 0.15] }),
  ),
  jindal('Example 16-4, p. 453', 'clamp force of a hand torque, kN', '7.299', () =>
    loadAt(54, { mean: 24, lead: 8, friction: 0.12, collar: [62, 0.15] }),
  ),
  jindal('Example 16-5, p. 453', 'load of a two-start screw, kN', '23.6', () =>
    loadAt(98.1, { mean: 21, lead: 16, friction: 0.14 }),
  ),
  jindal('Example 16-8, p. 456', 'two-start press screw, N·m', '145.242', () => raise(JINDAL_PRESS)),
  jindal(
    'Example 16-8, p. 456',
    'its efficiency without collar',
    '0.4751',
    () => efficiency(JINDAL_PRESS) / 100,
  ),
  rowsOf('sarkar-tom')(
    'Illustration 10, p. 108',
    'V-thread bolt with collar, force on a 380 mm spanner, N',
    '102.3',
    () => raise({ load: 6500, mean: 25, lead: 6, friction: 0.1, flank: 27.5, collar: [40, 0.18] }) / 0.38,
    { tolerance: 0.15, why: 'the solution takes 3.147 for π' },
  ),
  beer('Sample Problem 8.5', 'clamp force of 40 N·m, two-start thread, kN', '18.01', () => loadAt(40, CLAMP)),
  beer('Sample Problem 8.5', 'torque that loosens it, N·m', '14.97', () =>
    lower({ ...CLAMP, load: loadAt(40, CLAMP) * 1000 }),
  ),
  tayal('Example 8.5', 'screw jack, force at 700 mm, N', '15.408712', () => raise(TAYAL_JACK) / 0.7),
  tayal(
    'Example 8.5',
    'the same without friction, N',
    '4.547284',
    () => raise({ ...TAYAL_JACK, friction: 0 }) / 0.7,
  ),
  bansal('Example 9.22, p. 327', 'screw jack raising, N', '9.22', () => raise(BANSAL_JACK) / 0.7),
  bansal('Example 9.22, p. 327', 'screw jack lowering, N', '3.02', () => lower(BANSAL_JACK) / 0.7, {
    tolerance: 0.011,
    why: COARSE_PI,
  }),
  bansal(
    'Example 9.23(A), p. 328',
    'screw jack, force at 600 mm, N',
    '27.03',
    () => raise({ load: 5000, mean: 57, lead: 6, friction: 0.08 }) / 0.6,
  ),
  bansal('Example 9.26, p. 333', 'steep screw, force at 360 mm, N', '7.13', () => raise(BANSAL_STEEP) / 0.36),
  bansal(
    'Example 9.26, p. 333',
    'steep screw, torque that holds the load, N·m',
    '0.31',
    () => -lower(BANSAL_STEEP),
  ),
  bansal('Example 9.27, p. 334', 'efficiency of a screw jack, %', '31.9', () =>
    efficiency({ load: 1000, mean: 60, lead: 8, friction: 0.09 }),
  ),
  bhavikatti(
    'Example 6.15',
    'screw jack, force at 300 mm, N',
    '57.0287539936',
    () => raise(BHAVIKATTI_JACK) / 0.3,
    { tolerance: 0.03, step: 0.01, why: `${COARSE_PI}: its digits after the second say nothing` },
  ),
  bhavikatti(
    'Example 6.15',
    'torque that holds the load, N·mm',
    '2047.61904762',
    () => -lower(BHAVIKATTI_JACK) * 1000,
    { tolerance: 6, step: 1, why: `${COARSE_PI}: its decimals say nothing; the unit is N·mm` },
  ),
  khurmi(
    'Example 10.10, p. 279',
    'raising over lowering torque',
    '4.2',
    () => raise(KHURMI_10) / lower(KHURMI_10),
  ),
  khurmi('Example 10.10, p. 279', 'efficiency, %', '37.6', () => efficiency(KHURMI_10)),
  khurmi('Example 10.10, p. 279', 'torque to raise, N·mm', '132629', () => raise(KHURMI_10) * 1000, {
    tolerance: 300,
    why: 'the solution rounds tan λ to 0.08: 0.2 %',
  }),
  khurmi('Example 10.11, p. 280', 'efficiency without collar, %', '44.1', () => efficiency(KHURMI_11)),
  khurmi('Example 10.11, p. 280', 'efficiency with collar, %', '31.8', () => efficiency(KHURMI_11_COLLAR)),
  khurmi('Example 10.11, p. 280', 'work of 17 turns without collar, N·m', '7717', () => work(KHURMI_11), {
    tolerance: 8,
    why: 'the solution rounds tan λ to 0.0637 and the force to tens: 0.1 %',
  }),
  khurmi(
    'Example 10.11, p. 280',
    'work of 17 turns with collar, N·m',
    '10710',
    () => work(KHURMI_11_COLLAR),
    {
      tolerance: 12,
      step: 10,
      why: 'printed to tens, tangents rounded',
    },
  ),
  mclean(
    'Example 9.15, p. 140',
    'jack screw raising, lbf at 2 ft',
    '31.7',
    () => raiseInch(MCLEAN_JACK) / 24,
    {
      tolerance: 0.2,
      why: 'the solution rounds the tangent to 0.19',
    },
  ),
  mclean(
    'Example 9.15, p. 140',
    'jack screw lowering, lbf at 2 ft',
    '18.2',
    () => lowerInch(MCLEAN_JACK) / 24,
    { tolerance: 0.1, why: 'the solution rounds the tangent to 0.109' },
  ),
  bhandari('Example 6.4, p. 198', 'sluice screw raising, N on arms 1 m apart', '52.410253', () =>
    raise(SLUICE),
  ),
  bhandari('Example 6.4, p. 198', 'sluice screw lowering 3 kN, N on arms 1 m apart', '15.626055', () =>
    lower({ ...SLUICE, load: 3000 }),
  ),
  bhandari('Example 6.4, p. 198', 'sluice screw, efficiency, %', '14.879898', () => efficiency(SLUICE)),
  bhandari(
    'Example 6.5, p. 199',
    'straightener, N at a 500 mm hand wheel',
    '388.909290',
    () => raise(STRAIGHTENER) / 0.25,
  ),
  bhandari('Example 6.5, p. 199', 'straightener, efficiency, %', '16.369364', () => efficiency(STRAIGHTENER)),
  bhandari('Example 6.6', 'lead screw, trapezoidal 30°, efficiency, %', '12.937099', () =>
    efficiency(LEAD_SCREW),
  ),
  bhandari(
    'Example 6.6',
    'lead screw, power at 30 rev/min, kW',
    '0.061838',
    () => (Math.PI * raise(LEAD_SCREW)) / 1000,
  ),
  solutions('Problem 8-4, p. 205', 'torque to raise, N·m', '16.23', () => raise(P8_4)),
  solutions('Problem 8-4, p. 205', 'torque to lower, N·m', '6.622', () => lower(P8_4)),
  solutions('Problem 8-4, p. 205', 'efficiency', '0.294', () => efficiency(P8_4) / 100),
  solutions('Problem 8-4, p. 205', 'thread part, raising, N·m', '10.23', () => raise(P8_4_THREAD)),
  solutions('Problem 8-4, p. 205', 'thread part, lowering, N·m', '0.622', () => lower(P8_4_THREAD)),
  solutions('Problem 8-4, 9th ed.', 'torque to raise, N·m', '15.85', () => raise(P8_4_NINTH)),
  solutions('Problem 8-4, 9th ed.', 'torque to lower, N·m', '7.83', () => lower(P8_4_NINTH)),
  solutions('Problem 8-4, 9th ed.', 'efficiency', '0.251', () => efficiency(P8_4_NINTH) / 100),
  solutions('Problem 8-6, p. 205', 'Acme thread part, lbf·in', '377.6', () => raiseInch(P8_6_THREAD), {
    tolerance: 0.15,
    why: 'the manual rounds sec α to 1.033',
  }),
  solutions('Problem 8-6, p. 205', 'thread and bearing, lbf·in', '753', () =>
    raiseInch({ ...P8_6_THREAD, collar: [5, 0.06] }),
  ),
  solutions(
    'Problem 8-7, p. 206',
    'pitch diameter of 7/16-14, in',
    '0.3911',
    () => P8_7_THREAD.pitchDiameter / INCH,
  ),
  solutions('Problem 8-7, p. 206', 'torque over clamp force, in', '0.02845', p8_7Arm),
  solutions('Problem 8-7, p. 206', 'clamp force of 29.2 lbf·in, lbf', '1030', () => 29.2 / p8_7Arm(), {
    step: 10,
    why: 'half the last printed digit; printed to three figures',
  }),
  solutions('Problem 8-3', 'efficiency at a lead angle of 20°', '0.796', () => byLeadAngle(20)),
  solutions('Problem 8-3', 'efficiency at a lead angle of 30°', '0.838', () => byLeadAngle(30)),
  solutions('Problem 8-3', 'efficiency at a lead angle of 40°', '0.8517', () => byLeadAngle(40), {
    tolerance: 1.1e-4,
    why: 'the manual is one off in its last digit',
  }),
  solutions('Problem 8-3', 'efficiency at a lead angle of 45°', '0.8519', () => byLeadAngle(45), {
    tolerance: 1.1e-4,
    why: 'the manual is one off in its last digit',
  }),
];
