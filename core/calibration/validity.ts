import type { CertificateData } from '../contract/tool.ts';

interface Dated {
  readonly data: Pick<CertificateData, 'calibratedOn' | 'validUntil'>;
}

/** How a tool stands on a date: the certificate to use, and why there is none when there is none. */
export type CertificateStanding<C> =
  | { readonly state: 'in force'; readonly certificate: C }
  | { readonly state: 'lapsed'; readonly certificate: C }
  | { readonly state: 'later'; readonly certificate: C }
  | { readonly state: 'none' };

/**
 * The certificate that counts on a date: the newest one calibrated on or before it, in force through its last day.
 *
 * @param certificates in any order
 * @param date calendar date YYYY-MM-DD in the site's time zone
 * @returns the certificate in force, or null
 * @example certificateInForce([{ data: { calibratedOn: '2026-01-10', validUntil: '2027-01-09' } }], '2027-01-10') //
 * null
 * @source validity as written on the certificate; ISO/IEC 17025:2017, 7.8.4 leaves the interval to the user
 */
export function certificateInForce<C extends Dated>(certificates: readonly C[], date: string): C | null {
  const standing = certificateStanding(certificates, date);
  return standing.state === 'in force' ? standing.certificate : null;
}

/**
 * As `certificateInForce`, but also names the certificate that just misses the date.
 *
 * @param certificates in any order; of two calibrations on one day the later in the list wins
 * @param date calendar date YYYY-MM-DD in the site’s time zone
 * @returns in force, lapsed or later with the certificate meant; none when there is no certificate at all
 * @example certificateStanding([{ data: { calibratedOn: '2026-01-10', validUntil: '2027-01-09' } }],
 * '2027-01-10').state // 'lapsed'
 * @source validity as written on the certificate; ISO/IEC 17025:2017, 7.8.4 leaves the interval to the user
 */
export function certificateStanding<C extends Dated>(
  certificates: readonly C[],
  date: string,
): CertificateStanding<C> {
  // ISO dates compare as text. A newer calibration replaces an older one even when the older would run longer.
  const earlier = certificates.filter((certificate) => certificate.data.calibratedOn <= date);
  const newest = latest(earlier);
  if (newest !== null) {
    return { state: newest.data.validUntil >= date ? 'in force' : 'lapsed', certificate: newest };
  }
  const coming = latest(certificates);
  return coming === null ? { state: 'none' } : { state: 'later', certificate: coming };
}

function latest<C extends Dated>(certificates: readonly C[]): C | null {
  // Of two calibrations on one day the later in the list wins: the register hands them over newest last.
  return certificates.reduce<C | null>(
    (newest, one) => (newest === null || one.data.calibratedOn >= newest.data.calibratedOn ? one : newest),
    null,
  );
}

/**
 * Whether a certificate that is in force at the start runs out before the job's last day.
 *
 * @param certificate certificate that is in force at the start
 * @param endsOn last day of the job, YYYY-MM-DD
 * @returns true when it is no longer in force on that day
 * @example lapsesDuringJob({ data: { calibratedOn: '2026-01-10', validUntil: '2027-01-09' } }, '2027-01-10') // true
 * @source validity as written on the certificate, through its last day
 */
export function lapsesDuringJob(certificate: Dated, endsOn: string): boolean {
  return certificate.data.validUntil < endsOn;
}
