import type {
  AssessEvidence,
  BreakEvidence,
  Criticality,
  InspectionEvidence,
  IsolationEvidence,
  MakeUpEvidence,
  ReinstateEvidence,
  RelaxationEvidence,
  ReleaseEvidence,
  TestEvidence,
  WitnessEvidence,
} from '../contract/assembly.ts';
import type { BreakoutData, TighteningData } from '../contract/event.ts';
import type { JointData } from '../contract/joint.ts';
import type { PassData } from '../contract/pass.ts';
import type { SettingCard } from '../contract/setting.ts';
import type { ResolvedJoint } from '../joint/resolve.ts';

/** Newest evidence of each step since the last break; null for a step that was not recorded. */
export interface StepsOfRecord {
  readonly assess: AssessEvidence | null;
  readonly isolate: IsolationEvidence | null;
  readonly release: ReleaseEvidence | null;
  readonly break: BreakEvidence | null;
  readonly inspect: InspectionEvidence | null;
  readonly 'make up': MakeUpEvidence | null;
  readonly witness: WitnessEvidence | null;
  readonly 'relaxation pass': RelaxationEvidence | null;
  readonly test: TestEvidence | null;
  readonly reinstate: ReinstateEvidence | null;
}

/** Everything the register holds of one assembly of a joint, from its break to its return to service. */
export interface AssemblyRecord {
  readonly joint: JointData;
  readonly unitName: string;
  readonly resolved: Pick<
    ResolvedJoint,
    'boltCount' | 'thread' | 'studLength' | 'nut' | 'grip' | 'radialGap'
  >;
  /** Null while nobody has assessed the joint. */
  readonly criticality: Criticality | null;
  /** Leaks of the joint that the register knows. */
  readonly leaks: number;
  readonly steps: StepsOfRecord;
  /** Who returned it to service, as recorded with the step. */
  readonly reinstatedBy: string | null;
  /** The setting that was followed, or the newest issued while nothing was tightened. */
  readonly setting: {
    readonly number: string;
    readonly card: Pick<
      SettingCard,
      'targetTorque' | 'targetLoad' | 'stressTensile' | 'stressRoot' | 'passes' | 'planName'
    >;
  } | null;
  readonly tightening: {
    readonly data: TighteningData;
    readonly flags: readonly string[];
    readonly people: readonly string[];
    /** Who was signed in; null without sign-in. */
    readonly recordedBy: string | null;
  } | null;
  readonly passes: readonly PassData[];
  /** The breakout this assembly began with. */
  readonly breakout: { readonly data: BreakoutData; readonly on: string } | null;
  /** Certificates of the assemblers on the day, in words; null where the register knows none. */
  readonly competence: string | null;
  readonly signatures: readonly string[];
}

const NO_STEPS: StepsOfRecord = {
  assess: null,
  isolate: null,
  release: null,
  break: null,
  inspect: null,
  'make up': null,
  witness: null,
  'relaxation pass': null,
  test: null,
  reinstate: null,
};

/**
 * A record of which nothing but the joint is known yet.
 *
 * @param joint joint as stored
 * @param resolved the same with its blanks filled from the standards
 * @returns record without steps, tightening or breakout
 * @example emptyRecord(data, joint).tightening // null
 * @source rule of this program
 */
export function emptyRecord(joint: JointData, resolved: AssemblyRecord['resolved']): AssemblyRecord {
  return {
    joint,
    unitName: '',
    resolved,
    criticality: null,
    leaks: 0,
    steps: NO_STEPS,
    reinstatedBy: null,
    setting: null,
    tightening: null,
    passes: [],
    breakout: null,
    competence: null,
    signatures: [],
  };
}
