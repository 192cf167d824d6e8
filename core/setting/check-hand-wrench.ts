import { certificateStanding } from '../calibration/validity.ts';
import type { Raised } from '../findings/finding.ts';
import { checkValidity } from './check-certificates.ts';
import { checkCustody } from './check-set.ts';
import { checkToolRoom } from './check-tool-room.ts';
import type { CardInput } from './input.ts';

/**
 * Looks at the hand torque wrench of the register: in use, nothing overdue, no case, and its certificate within limits.
 * Its scale and the days of its certificate are looked at with the setting itself.
 *
 * @param input input of the card
 * @returns findings; none when nothing stands against it, or when the tool is typed in
 * @example checkHandWrench(input).length // 0
 * @source as for every other tool of the register
 */
export function checkHandWrench(input: CardInput): Raised[] {
  const { handWrench } = input;
  if (handWrench === null) return [];
  const standing = certificateStanding(handWrench.certificates, input.startsOn);
  return [
    ...checkCustody(handWrench),
    ...checkToolRoom(input),
    ...checkValidity(input, handWrench, standing).filter(({ code }) => SAID_HERE.includes(code)),
  ];
}

/** The rest is said with the setting. */
const SAID_HERE: readonly Raised['code'][] = ['certificate_outside_limits', 'certificate_later_than_job'];
