import type { CertificateData } from '../../../core/contract/tool.ts';
import type { RowReader } from './row.ts';

type Torques = Extract<CertificateData['measured'], { kind: 'pressure-torque' }>['points'];

/**
 * Torque of a hydraulic wrench rises with pressure. Within one direction each pressure stands once and a higher one
 * gives a higher torque; anything else is a slip of the pen or a faulty wrench, and a line through it would hide that.
 * `rows[i]` is where `points[i]` was read. Readings taken again at one pressure stand once somebody has confirmed them.
 */
export function checkTorquePoints(points: Torques, rows: readonly RowReader[], repeated: boolean): void {
  for (const direction of ['up', 'down'] as const) {
    const order = points
      .map((point, index) => ({ point, row: rows[index] }))
      .filter(({ point }) => point.direction === direction)
      .sort((a, b) => a.point.pressure.si - b.point.pressure.si);
    order.forEach(({ point, row }, index) => {
      const lower = order[index - 1];
      if (!lower || !row) return;
      if (lower.point.pressure.si === point.pressure.si) {
        if (repeated) return;
        row.fault(
          'pressure',
          `each pressure once ${direction}wards; line ${lower.row?.line} has the same. Readings taken again stand with "equal pressures" in the column "confirmed"`,
        );
      } else if (lower.point.torque.si >= point.torque.si) {
        row.fault(
          'torque',
          `more than ${lower.point.torque.text}, which line ${lower.row?.line} gives at a lower pressure`,
        );
      }
    });
  }
  const pressures = new Set(points.map(({ pressure }) => pressure.si));
  const last = rows.at(-1);
  if (pressures.size < 3)
    last?.fault('pressure', `at least 3 different pressures; the file has ${pressures.size}`);
}
