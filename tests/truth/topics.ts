import { BUDGET_ROWS } from './budgets.rows.ts';
import { CALIBRATION_ROWS } from './calibration.rows.ts';
import { EXPANSION_ROWS } from './expansion.rows.ts';
import { GASKET_ROWS } from './gasket.rows.ts';
import { GUM_ROWS } from './gum-h3.rows.ts';
import { LEAK_ROWS } from './leaks.rows.ts';
import { LINE_ROWS } from './lines.rows.ts';
import { LOOSENING_ROWS } from './loosening.rows.ts';
import { NUT_TABLE_ROWS } from './nut-tables.rows.ts';
import { NUT_ROWS } from './nuts.rows.ts';
import { PCC_1_ROWS } from './pcc-1.rows.ts';
import { PRELOAD_ROWS } from './preload.rows.ts';
import type { TruthRow } from './row.ts';
import { SCATTER_ROWS } from './scatter.rows.ts';
import { SCREW_ROWS } from './screws.rows.ts';
import { STATISTICS_ROWS } from './statistics.rows.ts';
import { STIFFNESS_ROWS } from './stiffness.rows.ts';
import { THREAD_TABLE_ROWS } from './thread-tables.rows.ts';
import { THREAD_ROWS } from './threads.rows.ts';
import { TORQUE_ROWS } from './torque.rows.ts';
import { UNCERTAINTY_ROWS } from './uncertainty.rows.ts';
import { UNIT_ROWS } from './units.rows.ts';
import { VDI_ROWS } from './vdi-2230.rows.ts';
import { VESSEL_SAMPLE_ROWS } from './vessel-sample.rows.ts';
import { WORKED_JOINT_A_ROWS } from './worked-joint-a.rows.ts';

/** Every row, by what an engineer would look it up under. */
export const TOPICS: Readonly<Record<string, readonly TruthRow[]>> = {
  'Torque and load': [...TORQUE_ROWS, ...SCREW_ROWS],
  'Preload, stiffness and load share': [...PRELOAD_ROWS, ...STIFFNESS_ROWS],
  'Assembly load and torque (VDI 2230, PCC-1)': [...VDI_ROWS, ...PCC_1_ROWS],
  Loosening: LOOSENING_ROWS,
  'Thermal expansion': EXPANSION_ROWS,
  'Gasket, code minimum and nut threads': [...GASKET_ROWS, ...VESSEL_SAMPLE_ROWS],
  'Calibration lines': [...GUM_ROWS, ...LINE_ROWS, ...CALIBRATION_ROWS],
  'Uncertainty budgets and spread': [...UNCERTAINTY_ROWS, ...BUDGET_ROWS],
  'Statistics and breakout': STATISTICS_ROWS,
  Threads: [...THREAD_ROWS, ...THREAD_TABLE_ROWS],
  Nuts: [...NUT_ROWS, ...NUT_TABLE_ROWS],
  Units: UNIT_ROWS,
  'Elastic interaction': SCATTER_ROWS,
  'Rates of leaks': LEAK_ROWS,
  'Worked joint A': WORKED_JOINT_A_ROWS,
};

export const ALL_ROWS: readonly TruthRow[] = Object.values(TOPICS).flat();
