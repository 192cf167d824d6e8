import type { CheckKind, ChecklistData, ToolRuleData } from '../contract/check.ts';

/** What the register knows of one tool's past, as far as rules and checks ask. Dates are the site's, YYYY-MM-DD. */
export interface ToolFacts {
  readonly toolId: string;
  /** Recorded events it was used in. */
  readonly uses: { readonly total: number; readonly sinceCertificate: number };
  /** Newest check of each kind and list. */
  readonly checks: readonly {
    readonly id: string;
    readonly kind: CheckKind;
    readonly checklistId: string | null;
    readonly on: string;
    readonly result: 'passed' | 'failed';
    /** Recorded uses since it. */
    readonly usesSince: number;
  }[];
  /** Open cases that name it. */
  readonly openCases: readonly { readonly id: string; readonly number: string }[];
  /** Newest use beyond what it may stand, with no calibration or passed check since; null when there is none. */
  readonly overload: { readonly eventId: string; readonly on: string; readonly text: string } | null;
  /** Open kits that hold it. */
  readonly kits: readonly {
    readonly id: string;
    readonly name: string;
    /** Joints it is for; empty when it names none. */
    readonly jointIds: readonly string[];
    readonly from: string;
    readonly to: string;
  }[];
}

/** The site's rules for tools and its lists of checks, as they stand when a card is computed. */
export interface ToolRules {
  readonly rules: readonly ToolRuleData[];
  readonly checklists: readonly { readonly id: string; readonly data: ChecklistData }[];
}

/** Everything of the tool room that a card rests on. */
export interface ToolRoom extends ToolRules {
  readonly facts: readonly ToolFacts[];
}

/** A register without rules, checks and kits. */
export const NO_TOOL_ROOM: ToolRoom = { rules: [], checklists: [], facts: [] };
