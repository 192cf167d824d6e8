import { findThread } from '../bolting/thread.ts';
import type { JointData } from '../contract/joint.ts';
import type { Assumption } from '../contract/replay.ts';

const AS_ASKED = 'assumed for this question';

/**
 * A joint's data with one thing taken to be otherwise.
 *
 * @param data joint as a bolt set sees it
 * @param assumption nut factor, thread or gasket stresses
 * @returns data with that one thing changed; null where the joint has no such thing to change
 * @example assuming(data, { kind: 'nut factor', nutFactor: { text: '0.2', unit: 'one', si: 0.2 } })?.lubricant?.nutFactor?.si // 0.2
 * @source rule of this program
 */
export function assuming(data: JointData, assumption: Assumption): JointData | null {
  switch (assumption.kind) {
    case 'nut factor': {
      const { lubricant } = data;
      if (lubricant === null) return null;
      return {
        ...data,
        lubricant: {
          ...lubricant,
          nutFactor: assumption.nutFactor,
          frictionThread: null,
          frictionBearing: null,
          evidence: 'assumed',
          source: AS_ASKED,
        },
      };
    }
    case 'stud size':
      return findThread(assumption.thread) === null
        ? null
        : { ...data, bolting: { ...data.bolting, thread: assumption.thread } };
    case 'gasket limit': {
      const { gasket } = data;
      if (gasket === null) return null;
      return {
        ...data,
        gasket: {
          ...gasket,
          seatingStress: assumption.seating ?? gasket.seatingStress,
          stressMax: assumption.most ?? gasket.stressMax,
        },
      };
    }
  }
}
