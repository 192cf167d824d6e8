import type { CompetenceStanding } from '../../../core/access/competence.ts';
import type { CompetenceData } from '../../../core/contract/access.ts';
import type { AttachmentData } from '../../../core/contract/attachment.ts';
import type { CampaignData, JobData } from '../../../core/contract/campaign.ts';
import type { CheckData, ChecklistData, ToolRuleData } from '../../../core/contract/check.ts';
import type { KitData, MoveData, ToolStatus } from '../../../core/contract/custody.ts';
import type { BatchUsed, BreakoutData, TighteningData } from '../../../core/contract/event.ts';
import type { ImportKind } from '../../../core/contract/import.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import type { CyclesData } from '../../../core/contract/leak-log.ts';
import type { ClassRuleData, DeviationDecisionData, StepData } from '../../../core/contract/life.ts';
import type { PassData } from '../../../core/contract/pass.ts';
import type { CaseData, CloseData, DecisionData, RecallView } from '../../../core/contract/recall.ts';
import type { Role } from '../../../core/contract/roles.ts';
import type { SettingCard, SettingData } from '../../../core/contract/setting.ts';
import type { SignatureData } from '../../../core/contract/signature.ts';
import type { ConfirmData, PassPlanData, SiteRowData } from '../../../core/contract/site.ts';
import type { CertificateData, ToolClass, ToolData } from '../../../core/contract/tool.ts';
import type { FindingCode } from '../../../core/findings/codes.ts';
import type { CalibrationOfWork } from '../../../core/joint/life/calibration.ts';
import type { ClassGiven, TighteningEvent } from '../../../core/joint/life/standing.ts';
import type { CardInput } from '../../../core/setting/input.ts';

/** Version of the bodies written now. Bodies already recorded keep theirs for ever. */
export const BODY_VERSION = 1;

interface SiteData {
  readonly id: string;
  readonly name: string;
  readonly timeZone: string;
  /** True for the invented plant. */
  readonly demo: boolean;
}

/** A torque with how it is known; null torque says in `basis` what was missing. */
export interface KnownTorque {
  readonly torque: number | null;
  readonly basis: string;
  readonly certificateId: string | null;
}

export type BatchKind = BatchUsed['kind'];

export type BatchUse = Readonly<BatchUsed> & { readonly id: string };

/** A record of master data as it stands after an edit. `importId` names the import event it came with. */
interface Saved<T> {
  readonly id: string;
  readonly version: number;
  readonly data: T;
  readonly importId: string | null;
}

/** What was frozen when work was recorded: everything the columns need, so that they can be rebuilt from bodies alone. */
interface RecordedWork<T> {
  readonly data: T;
  readonly flags: readonly string[];
  readonly jointVersion: number;
  readonly coreVersion: string;
  readonly batches: readonly BatchUse[];
  /** Tools taken beyond what they may stand; absent in bodies recorded before it was kept. */
  readonly overloads?: readonly Overload[];
  /** Tools of its passes beside its own; absent in bodies recorded before passes were kept. */
  readonly passTools?: readonly PassTool[];
  /** Of each person who did it; absent in bodies recorded before it was kept. */
  readonly competences?: readonly PersonCompetence[];
}

/** What a tightening means for the state of its joint, as it was known when it was recorded. */
export type TighteningLife = Pick<
  TighteningEvent,
  'boltSets' | 'complete' | 'lacks' | 'calibration' | 'why' | 'setAside' | 'ordinal'
> & {
  /** Class it is counted in; null for one that is not counted. */
  readonly classKey: string | null;
};

export interface PassTool {
  readonly toolId: string;
  readonly role: ToolClass;
}

export interface Overload {
  readonly toolId: string;
  readonly text: string;
}

export interface StatusChange {
  readonly toolId: string;
  readonly from: ToolStatus;
  readonly to: ToolStatus;
}

/** How a person's competence stood on the day of the work, under the name they had then. */
export interface PersonCompetence extends CompetenceStanding {
  readonly personId: string;
  readonly name: string;
}

/** What a secret was asked for. */
export type SecretUse = 'sign-in' | 'change of the secret' | 'signature';

/** A refusal that was set aside, as it stood; the card keeps the finding itself. */
export interface SetAside {
  readonly code: FindingCode;
  /** What it was about, one entry for each finding of the code. */
  readonly findings: readonly { readonly subject: string; readonly title: string; readonly detail: string }[];
  readonly reason: string;
}

/** Kind → what the body carries. Names are frozen once released. */
export interface EventDataByKind {
  'register created': { readonly site: SiteData };
  'unit saved': Saved<{ readonly name: string }> & { readonly siteId: string };
  'person saved': Saved<{ readonly name: string; readonly role: string }>;
  'joint saved': Saved<JointData>;
  'tool saved': Saved<ToolData>;
  'certificate added': { readonly data: CertificateData; readonly importId: string | null };
  'setting issued': {
    readonly number: string;
    readonly personId: string;
    readonly input: SettingData;
    /** What the card was computed from. The register's other cassettes and reducers only name alternatives in refusals. */
    readonly cardInput: CardInput;
    readonly card: SettingCard;
    /** Absent in bodies recorded before refusals could be set aside. */
    readonly overrides?: readonly SetAside[];
    /** How the issuer's competence stood; null without sign-in, absent in bodies recorded before it was kept. */
    readonly issuerCompetence?: CompetenceStanding | null;
  };
  'tightening recorded': RecordedWork<TighteningData> & {
    readonly torque: KnownTorque;
    /** Absent in bodies recorded before joints had states. */
    readonly life?: TighteningLife;
  };
  'breakout recorded': RecordedWork<BreakoutData> & {
    /** One per reading, in the same order. */
    readonly torques: readonly KnownTorque[];
  };
  'pass recorded': RecordedWork<PassData> & {
    /** Null for a stop before the first bolt. */
    readonly lastBolt: number | null;
    /** Of the tools it was made with; null for one by hand, absent in bodies recorded before it was kept. */
    readonly calibration?: CalibrationOfWork | null;
  };
  'joint stepped': {
    readonly data: StepData;
    /** Class given by an assessment. */
    readonly class: ClassGiven | null;
    /** Why it was out of order; none for a step that was in order. */
    readonly outOfOrder: readonly string[];
    /** Rule it was held against, so that one changed later rewrites no past. */
    readonly rule: ClassRuleData | null;
  };
  'deviation decided': { readonly data: DeviationDecisionData };
  /** Thermal cycles over days of the site, whose time zone says when a day begins. */
  'cycles counted': { readonly data: CyclesData; readonly timeZone: string };
  'class rule saved': { readonly id: string; readonly version: number; readonly data: ClassRuleData };
  'site row saved': { readonly id: string; readonly version: number; readonly data: SiteRowData };
  /** A new version is not approved, whatever the one before it was. */
  'pass plan saved': { readonly id: string; readonly version: number; readonly data: PassPlanData };
  'pass plan approved': { readonly id: string; readonly version: number; readonly personId: string };
  'table values confirmed': { readonly data: ConfirmData };
  'tool moved': {
    readonly data: MoveData;
    readonly moves: readonly StatusChange[];
    /** Event it follows from: a return in bad condition, a failed check, a case; null when a person decided. */
    readonly causeId: string | null;
  };
  'tool checked': {
    readonly data: CheckData;
    /** The site's list as it was followed. */
    readonly checklist: ChecklistData | null;
    /** Largest error of its comparisons, delivered over intended less one. */
    readonly error: number | null;
  };
  'checklist saved': { readonly id: string; readonly version: number; readonly data: ChecklistData };
  'tool rule saved': { readonly id: string; readonly version: number; readonly data: ToolRuleData };
  'kit saved': { readonly id: string; readonly version: number; readonly data: KitData };
  'campaign saved': { readonly id: string; readonly version: number; readonly data: CampaignData };
  /** With who changed it and why; a job that came with a list is its import's. */
  'job saved': Saved<JobData> & { readonly personId: string | null; readonly reason: string };
  /** `subject` and `basis` in words, as they stood when it was opened. */
  'case opened': {
    readonly number: string;
    readonly subject: string;
    readonly basis: string;
    readonly data: CaseData;
  };
  'case decided': { readonly data: DecisionData };
  /** With the list as it stood on closing. */
  'case closed': { readonly data: CloseData; readonly recall: RecallView };
  /** The content lies in a file named by its hash. */
  'attachment added': Omit<AttachmentData, 'content'> & { readonly hash: string; readonly size: number };
  /** From here on the register asks who is there. It is never undone. */
  'sign-in begun': { readonly personId: string };
  'signed in': { readonly personId: string };
  /** Null: a name that nobody with a secret has. What was typed is not kept: it may be a secret in the wrong field. */
  'sign-in failed': { readonly personId: string | null; readonly use: SecretUse };
  'locked out': { readonly personId: string | null; readonly until: string };
  /** That it was changed and by whom; neither the secret nor anything made of it. */
  'secret changed': {
    readonly personId: string;
    readonly by: 'the person' | 'an administrator';
    readonly toBeChanged: boolean;
  };
  'person roles saved': {
    readonly personId: string;
    readonly version: number;
    readonly roles: readonly Role[];
  };
  'competence saved': { readonly id: string; readonly version: number; readonly data: CompetenceData };
  /** `hash` is that of the signed record, so that the signature binds to its exact content. */
  'record signed': SignatureData & {
    readonly kind: EventKind;
    /** "name": without sign-in, where a name is a claim. */
    readonly knownBy: 'secret' | 'name';
    /** Joints of the signed record, in whose histories the signature shows. */
    readonly jointIds: readonly string[];
  };
  'import confirmed': {
    readonly kind: ImportKind;
    readonly fileName: string;
    readonly fingerprint: string;
    readonly added: number;
    readonly changed: number;
    readonly unchanged: number;
    readonly leftOut: number;
  };
}

export type EventKind = keyof EventDataByKind;

/** An event as recorded, its data read back from the body. */
export interface RecordedEvent<K extends EventKind = EventKind> {
  readonly id: string;
  readonly originId: string;
  readonly sequence: number;
  readonly previousHash: string;
  readonly hash: string;
  readonly body: string;
  readonly kind: K;
  readonly happenedAt: string;
  readonly happenedAtUtc: string;
  readonly recordedAt: string;
  readonly supersedes: string | null;
  readonly data: EventDataByKind[K];
}

/** What the writer of an event provides; the chain adds the rest. */
export type EventDraft = {
  [K in EventKind]: {
    readonly kind: K;
    readonly id: string;
    readonly data: EventDataByKind[K];
    /** When it happened, with offset; defaults to the moment of recording. */
    readonly happenedAt?: string;
    readonly supersedes?: string;
  };
}[EventKind];

export type EventBody = {
  readonly bodyVersion: number;
  readonly id: string;
  readonly kind: EventKind;
  readonly originId: string;
  readonly sequence: number;
  readonly happenedAt: string;
  readonly recordedAt: string;
  /** Who was signed in; null without sign-in, absent in bodies recorded before it was kept. */
  readonly recordedBy?: string | null;
  readonly supersedes: string | null;
  readonly data: EventDataByKind[EventKind];
};
