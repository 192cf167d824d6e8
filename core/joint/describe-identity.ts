import type { JointIdentity } from '../contract/identity.ts';
import { showEntered } from '../text/number.ts';

/**
 * Where a joint is, in words for a person who stands before it.
 *
 * @param identity as stored
 * @returns side of its valve, and the way from its landmark; null for what is not known
 * @example describeIdentity(identityOf(data)).valve // null
 * @source rule of this program
 */
export function describeIdentity(identity: JointIdentity): { valve: string | null; landmark: string | null } {
  const { valve, valveSide, landmark, distance, direction } = identity;
  const way = [distance && showEntered(distance), direction].filter(Boolean).join(' ');
  return {
    valve: valve === '' ? null : `${valveSide ?? 'side not known'} of ${valve}`,
    landmark: landmark === '' ? null : way === '' ? landmark : `${way} from ${landmark}`,
  };
}
