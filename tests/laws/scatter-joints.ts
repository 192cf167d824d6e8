import type { RingJoint } from '../../core/scatter/bolts.ts';
import { rectangularSection } from '../../core/scatter/ring.ts';

/** The ring of worked joint B: NPS 8 Class 300, as its page states it. */
const ring = { ...rectangularSection(200e9, 0.08, 0.041, 0.3), centroidRadius: 0.14975 };

export const JOINT_B: RingJoint = {
  boltCount: 12,
  boltRadius: 0.1651,
  boltStiffness: 551_852e3,
  flanges: [ring, ring],
  gasket: { radius: 0.124275, foundation: 4e9, width: 0.01515 },
};

export const STAR_12 = [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12];
