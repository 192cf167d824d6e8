import { type JointIdentity, jointIdentity } from '../contract/identity.ts';
import type { JointData } from '../contract/joint.ts';

const UNKNOWN = jointIdentity.parse({});

/**
 * What tells a joint from others; of a joint stored before this was kept, nothing is known.
 *
 * @param data joint as stored
 * @returns identity, each part blank or null where it is not known
 * @example identityOf(data).valve // ''
 * @source rule of this program
 */
export function identityOf(data: { readonly identity?: JointData['identity'] }): JointIdentity {
  return data.identity ?? UNKNOWN;
}

/**
 * Whether a set of bolts holds the pressure in, where somebody has said so.
 *
 * @param bolting bolts of the joint or of a further set
 * @returns true, false, or null when not known
 * @example retainsPressure(data.bolting) // null
 * @source rule of this program
 */
export function retainsPressure(bolting: {
  readonly pressureRetaining?: JointData['bolting']['pressureRetaining'];
}): boolean | null {
  return bolting.pressureRetaining ?? null;
}
