import type { FindingCode } from '../../findings/codes.ts';
import type { Severity } from '../../findings/finding.ts';
import type { Calibration, SetAside } from './standing.ts';

/** What says that a tool was out of calibration on the day. */
const OUT: readonly FindingCode[] = [
  'certificate_lapsed',
  'certificate_later_than_job',
  'certificate_outside_limits',
];

/** What leaves open whether it was in calibration. */
const OPEN: readonly FindingCode[] = [
  'certificate_missing',
  'certificate_not_straight',
  'above_certified_points',
  'part_missing',
  'torque_tool_unknown',
  'tool_barred',
  'tool_in_case',
  'tool_due',
];

/** A finding as far as it tells of calibration. */
interface Told {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly subject: string;
  readonly words: () => { readonly title: string };
}

/** A refusal that was set aside when the setting was issued, and what it was about. */
interface Override {
  readonly code: FindingCode;
  readonly findings: readonly { readonly subject: string }[];
  readonly reason: string;
}

export interface CalibrationOfWork {
  readonly calibration: Calibration;
  /** What stands against the tools. */
  readonly why: readonly string[];
  /** Everything that stands against them was set aside by whoever issued the setting. */
  readonly setAside: SetAside | null;
}

/**
 * Whether the tools of a piece of work were in calibration, by what stood against them when it was recorded.
 *
 * @param findings what was really used, held against the checks; null while nobody told with what it was done
 * @param followed setting that was followed, with the refusals set aside and who issued it; null for none
 * @returns in calibration only where nothing speaks against it
 * @example calibrationOfWork(null, null).calibration // 'not known'
 * @source rule of this program; what is not known is never taken for in calibration
 */
export function calibrationOfWork(
  findings: readonly Told[] | null,
  followed: { readonly overrides: readonly Override[]; readonly issuedBy: string } | null,
): CalibrationOfWork {
  if (findings === null) {
    return { calibration: 'not known', why: ['the tools were not recorded'], setAside: null };
  }
  const refusals = findings.filter(({ severity }) => severity === 'refusal');
  const against = refusals.filter(({ code }) => OUT.includes(code) || OPEN.includes(code));
  if (against.length === 0) return { calibration: 'in calibration', why: [], setAside: null };
  return {
    calibration: against.some(({ code }) => OUT.includes(code)) ? 'not in calibration' : 'not known',
    why: against.map(({ words }) => words().title),
    setAside: followed === null ? null : setAsideFor(against, followed.overrides, followed.issuedBy),
  };
}

function setAsideFor(
  against: readonly Told[],
  overrides: readonly Override[],
  issuedBy: string,
): SetAside | null {
  const reasons = against.map(
    ({ code, subject }) =>
      overrides.find((one) => one.code === code && one.findings.some((each) => each.subject === subject))
        ?.reason,
  );
  if (reasons.some((reason) => reason === undefined)) return null;
  return { reason: [...new Set(reasons)].join('; '), by: issuedBy };
}

/**
 * The tools of a tightening and of its passes together: as good as the worst of them.
 *
 * @param parts tools of the tightening first, then of each pass that was made with a tool
 * @returns worst calibration with all that stands against it; set aside only where each of the bad ones is
 * @example worstCalibration([{ calibration: 'in calibration', why: [], setAside: null }]).calibration // 'in calibration'
 * @source rule of this program
 */
export function worstCalibration(parts: readonly CalibrationOfWork[]): CalibrationOfWork {
  const bad = parts.filter(({ calibration }) => calibration !== 'in calibration');
  const [first] = bad;
  if (first === undefined) return { calibration: 'in calibration', why: [], setAside: null };
  const aside = bad.map(({ setAside }) => setAside);
  return {
    calibration: bad.some(({ calibration }) => calibration === 'not in calibration')
      ? 'not in calibration'
      : 'not known',
    why: [...new Set(bad.flatMap(({ why }) => why))],
    setAside: aside.includes(null) ? null : first.setAside,
  };
}
