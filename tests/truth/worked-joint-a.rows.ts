import { elongation } from '../../core/bolting/elongation.ts';
import { findThread } from '../../core/bolting/thread.ts';
import { lineUncertainty } from '../../core/calibration/line.ts';
import type { SettingCard } from '../../core/contract/setting.ts';
import { resolveJoint } from '../../core/joint/resolve.ts';
import { boltSpacing } from '../../core/joint/space.ts';
import { settingCard } from '../../core/setting/card.ts';
import { hydraulicsOf } from '../../core/setting/hydraulics.ts';
import { row as anyRow, type TruthRow } from './row.ts';
import { workedJointA } from './worked-joint-a.ts';

const BAR = 1e5;

function row(what: string, expected: number, computed: () => number, relative = 1e-4): TruthRow {
  return anyRow('computed', what, 'worked-joint-a', 'NPS 8 Class 300', String(expected), () => computed(), {
    tolerance: Math.abs(expected) * relative,
    why:
      relative === 1e-4
        ? 'stated tolerance 1e-4 relative'
        : `stated tolerance or printed digits, ${relative} relative`,
  });
}

const fromCard = (pick: (card: SettingCard) => number | null | undefined) => () =>
  pick(settingCard(workedJointA())) ?? Number.NaN;

function line() {
  const found = hydraulicsOf(workedJointA()).line;
  if (found === null) throw new Error('worked joint A: no certificate line');
  return found;
}

function lineU(bar: number): number {
  return lineUncertainty(line(), bar * BAR);
}

function part(name: string) {
  return fromCard((card) => card.uncertainty?.parts.find((one) => one.name === name)?.u);
}

/** Root and tensile stress at the load aimed at, before rounding. */
function targetStress(area: 'tensileArea' | 'rootArea'): () => number {
  return () => {
    const load = settingCard(workedJointA()).targetLoad ?? Number.NaN;
    return load / (findThread('7/8-9 UNC')?.[area] ?? Number.NaN) / 1e6;
  };
}

const wanted = fromCard((card) => {
  const inputs = card.workings.find((working) => working.of === 'dial')?.inputs;
  const before = inputs?.find((input) => input.name === 'pressure before rounding')?.si;
  return before === undefined || before === null ? null : before / BAR;
});

export const WORKED_JOINT_A_ROWS: readonly TruthRow[] = [
  row(
    'load to aim at, kN',
    107.829,
    fromCard((card) => (card.targetLoad ?? Number.NaN) / 1000),
  ),
  row('tensile stress at that load, MPa', 361.975, targetStress('tensileArea')),
  row('root stress at that load, MPa', 398.608, targetStress('rootArea')),
  row(
    'torque to aim at, N·m',
    383.441,
    fromCard((card) => card.targetTorque),
  ),
  row('intercept, N·m', -5.73214, () => line().intercept),
  row('slope, N·m/bar', 1.49956, () => line().slope * BAR),
  row('u(a), N·m', 0.797823, () => line().interceptUncertainty),
  row('u(b), N·m/bar', 0.00184367, () => line().slopeUncertainty * BAR),
  row('cov(a, b)', -0.00130527, () => line().covariance * BAR),
  row('s, N·m', 1.16318, () => line().residualDeviation),
  row('through the origin (0 no)', 0, () => Number(line().throughOrigin)),
  row('pressure before rounding, bar', 259.524, wanted),
  row('u of the line there, bar', 0.289, () => lineU(259.524) / (line().slope * BAR), 2e-3),
  row(
    'u for one use, bar',
    0.828,
    () => Math.hypot(lineU(259.524), line().residualDeviation) / (line().slope * BAR),
    1e-3,
  ),
  row(
    'dialled, bar',
    260,
    fromCard((card) => card.dial?.value),
  ),
  row(
    'torque it gives, N·m',
    384.154,
    fromCard((card) => card.torque),
  ),
  row(
    'load it gives, kN',
    108.03,
    fromCard((card) => (card.load ?? Number.NaN) / 1000),
  ),
  row(
    'tensile stress it gives, MPa',
    362.648,
    fromCard((card) => (card.stressTensile ?? Number.NaN) / 1e6),
  ),
  row('u(T), line, N·m', 0.433, part('Certificate line'), 2e-3),
  row('u(T), repeatability, N·m', 1.163, part('Repeatability'), 1e-3),
  row('u(T), reference, N·m', 1.921, part('Laboratory reference'), 1e-3),
  row('u(T), gauge class, N·m', 8.658, part('Gauge class')),
  row('u(T), reading, N·m', 4.329, part('Reading')),
  row(
    'u(T)/T, %',
    2.589,
    fromCard((card) => 100 * (card.uncertainty?.torqueRelative ?? Number.NaN)),
  ),
  row(
    'u(F)/F, %',
    10.33,
    fromCard((card) => 100 * (card.uncertainty?.loadRelative ?? Number.NaN)),
  ),
  row(
    'first third, bar',
    90,
    fromCard((card) => card.passes[1]?.dial?.value),
  ),
  row(
    'first third, N·m',
    129.229,
    fromCard((card) => card.passes[1]?.torque),
  ),
  row(
    'second third, bar',
    170,
    fromCard((card) => card.passes[2]?.dial?.value),
  ),
  row(
    'second third, N·m',
    249.194,
    fromCard((card) => card.passes[2]?.torque),
  ),
  row(
    'full, N·m',
    384.154,
    fromCard((card) => card.passes[3]?.torque),
  ),
  row('half chord, mm', 42.73, () => (boltSpacing(0.3302, 12) / 2) * 1000, 2e-4),
  row(
    'half across corners of the neighbour, mm',
    21.08,
    () => {
      const corners = resolveJoint(workedJointA().joint.data).nut?.value.acrossCorners ?? Number.NaN;
      return (corners / 2) * 1000;
    },
    3e-4,
  ),
  row(
    'protrusion, mm',
    4.07,
    fromCard(
      (card) => (card.workings.find((one) => one.of === 'protrusion')?.result.si ?? Number.NaN) * 1000,
    ),
    1e-2,
  ),
  row(
    'elongation of grip and one diameter, mm',
    0.195,
    () => {
      const thread = findThread('7/8-9 UNC');
      if (thread === null) return Number.NaN;
      return (
        elongation(107829, [{ length: 0.0866 + thread.diameter, area: thread.tensileArea }], 202e9) * 1000
      );
    },
    1e-2,
  ),
];
