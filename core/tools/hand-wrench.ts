import { certificateStanding } from '../calibration/validity.ts';
import type { TorqueTool } from '../contract/setting.ts';
import type { ToolOnRegister } from '../setting/input.ts';

/**
 * A hand torque wrench of the register as a setting speaks of it: its scale, and the certificate that counts on a day.
 *
 * @param wrench hand torque wrench with its certificates
 * @param startsOn first day of the job, YYYY-MM-DD
 * @returns scale and certificate; the certificate is empty while there is none of that day or before
 * @example handWrenchAsSet({ id: 'a', data: { number: 'HW-1', properties: {} }, certificates: [] },
 * '2026-03-16').certificate // ''
 * @source register; validity as written on the certificate
 */
export function handWrenchAsSet(
  { id, data, certificates }: ToolOnRegister<'hand torque wrench'>,
  startsOn: string,
): TorqueTool {
  const { least, most, torqueGraduation } = data.properties;
  const standing = certificateStanding(certificates, startsOn);
  const certificate =
    standing.state === 'in force' || standing.state === 'lapsed' ? standing.certificate.data : null;
  return {
    toolId: id,
    number: data.number,
    scale: { by: 'torque', least, most, graduation: torqueGraduation },
    certificate: certificate?.number ?? '',
    validUntil: certificate?.validUntil ?? null,
  };
}
