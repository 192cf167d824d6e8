import type { AttachmentInput } from '../core/contract/attachment.ts';
import type { CampaignInput, JobInput } from '../core/contract/campaign.ts';
import type { CheckInput, ChecklistInput, ToolRuleInput } from '../core/contract/check.ts';
import type { KitInput, MoveInput } from '../core/contract/custody.ts';
import type { BreakoutInput, TighteningInput } from '../core/contract/event.ts';
import type { JointInput } from '../core/contract/joint.ts';
import type { ClassRuleInput, JointStep } from '../core/contract/life.ts';
import type { WorkKind } from '../core/contract/setting.ts';
import type { ConfirmData } from '../core/contract/site.ts';
import type { CertificateInput, ToolInput } from '../core/contract/tool.ts';

/**
 * Local keys stand where the register has ids: a unit's name, a person's name, a joint's tag, a tool's number.
 * Each is unique within the plant. Whoever replays the plant keeps one map per kind from key to the id it was given.
 * Quantities are in input form, {text, unit}; the contract's schemas parse them once the keys are replaced.
 */
type Keyed<T, From extends keyof T, To extends string> = Omit<T, From> & Record<To, string>;

/** A joint in input form; `unit` is the plant unit's name and becomes `unitId`. */
export type DemoJoint = Keyed<JointInput, 'unitId', 'unit'>;

/** A certificate in input form; `tool` and `withTools` are tool numbers. */
export type DemoCertificate = Keyed<CertificateInput, 'toolId' | 'withToolIds', 'tool'> & {
  readonly withTools: readonly string[];
};

/** Tool numbers of the set that was used; null or empty where the register has `…Id` null or empty. */
export interface DemoToolSet {
  readonly drive: string | null;
  readonly cassette: string | null;
  /** From the cassette towards the nut. */
  readonly reducers: readonly string[];
  readonly pump: string | null;
  readonly gauge: string | null;
  readonly hoses: readonly string[];
}

interface DemoWork {
  readonly kind: WorkKind;
  /** The joint's tag. */
  readonly joint: string;
  readonly happenedAt: string;
  /** Names of the people who did it. */
  readonly people: readonly string[];
  readonly tools: DemoToolSet;
  readonly remarks: string;
  /**
   * True: a setting is issued first, for this joint, kind and tools, starting and ending on the event's date, and
   * the event follows it. When the card refuses, the work is recorded without a setting, as it would be on site.
   * False: the work was done without a setting.
   */
  readonly withSetting: boolean;
}

export type DemoTightening = DemoWork & { readonly kind: 'tightening' } & Pick<
    TighteningInput,
    'dialled' | 'torque' | 'boltsTightened' | 'finalPassNoTurn' | 'loads'
  >;
export type DemoBreakout = DemoWork & { readonly kind: 'breakout' } & Pick<BreakoutInput, 'readings'>;
export type DemoEvent = DemoTightening | DemoBreakout;

/** Values of a table's row that a person is said to have confirmed; `person` is a name and becomes `personId`. */
export type DemoConfirmation = Keyed<ConfirmData, 'personId', 'person'>;

/** A check; `tool` is a number, `person` a name, `checklist` the name of a list in its first version. */
export type DemoCheck = Keyed<CheckInput, 'toolId' | 'personId' | 'checklist', 'tool' | 'person'> & {
  readonly checklist: string | null;
  /** Under which a case of the demo finds it. */
  readonly name: string | null;
};

export type DemoMove = Keyed<MoveInput, 'toolIds' | 'personId' | 'holderId' | 'kitId', 'person'> & {
  readonly tools: readonly string[];
  readonly holder: string | null;
};

/** A kit with the tags of its joints and the numbers of its tools. */
export type DemoKit = Omit<KitInput, 'toolIds' | 'jointIds'> & {
  readonly tools: readonly string[];
  readonly joints: readonly string[];
};

/** A paper that belongs to a certificate, by the certificate's number. */
export type DemoAttachment = Pick<AttachmentInput, 'name' | 'mediaType' | 'remarks'> & {
  readonly certificate: string;
  readonly person: string;
  readonly text: string;
};

/** A case on a failed check: opened, each load that needs it decided on alike, and closed by somebody else. */
export interface DemoCase {
  readonly tool: string;
  readonly check: string;
  readonly opened: { readonly at: string; readonly person: string; readonly remarks: string };
  readonly decided: {
    readonly at: string;
    readonly person: string;
    readonly decision: 'accept' | 'monitor';
    readonly reason: string;
  };
  readonly closed: {
    readonly at: string;
    readonly person: string;
    readonly conclusion: string;
    readonly measures: string;
  };
}

/** What the tool room does beside the work. */
export interface DemoRoom {
  /** Moment from which rules and lists hold. */
  readonly rulesAt: string;
  readonly rules: readonly ToolRuleInput[];
  readonly checklists: readonly ChecklistInput[];
  readonly checks: readonly DemoCheck[];
  readonly moves: readonly DemoMove[];
  readonly kitsAt: string;
  readonly kits: readonly DemoKit[];
  readonly attachments: readonly DemoAttachment[];
  readonly cases: readonly DemoCase[];
}

/** The invented plant in the order it is replayed; events are ordered by `happenedAt`, all before `today`. */
export interface DemoPlant {
  readonly site: { readonly name: string; readonly timeZone: string };
  readonly units: readonly { readonly name: string }[];
  readonly people: readonly { readonly name: string; readonly role: string }[];
  readonly joints: readonly DemoJoint[];
  readonly tools: readonly ToolInput[];
  readonly certificates: readonly DemoCertificate[];
  /** Confirmed before the first work. */
  readonly confirmations: readonly DemoConfirmation[];
  readonly events: readonly DemoEvent[];
  readonly room: DemoRoom;
  readonly life: DemoLife;
  readonly campaign: DemoCampaign;
}

export interface DemoCampaignSet {
  readonly name: string;
  readonly tools: DemoToolSet;
}

/** A job by its joint's tag. */
export type DemoJob = Keyed<JobInput, 'jointId' | 'campaignId', 'joint'>;

/** Planned work with its jobs; crews by the names of their people, sets by the numbers of their tools. */
export type DemoCampaign = Omit<CampaignInput, 'crews' | 'sets'> & {
  /** When it was entered. */
  readonly at: string;
  readonly crews: readonly (Omit<NonNullable<CampaignInput['crews']>[number], 'personIds'> & {
    readonly people: readonly string[];
  })[];
  readonly sets: readonly DemoCampaignSet[];
  readonly jobs: readonly DemoJob[];
};

/** A step at a joint, people by their names. */
export interface DemoStepTaken {
  readonly joint: string;
  readonly happenedAt: string;
  readonly step: JointStep;
  readonly by: string;
  /** As the step asks; "{name}" stands for a person. */
  readonly evidence: Readonly<Record<string, unknown>>;
  /** How it came about, for work out of order. */
  readonly reallyDone: string | null;
}

export interface DemoLife {
  readonly class: ClassRuleInput;
  readonly classAt: string;
  readonly steps: readonly DemoStepTaken[];
}
