import type { JointData } from '../contract/joint.ts';
import type { Method, TorqueTool, WorkKind } from '../contract/setting.ts';
import type { CertificateData, ToolData, ToolProperties } from '../contract/tool.ts';
import type { SiteTables } from '../joint/site-tables.ts';
import type { ToolRoom } from '../tools/facts.ts';

/** A tool with every certificate on the register that hangs on it, newest calibration last. */
export interface ToolOnRegister<C extends ToolProperties['class'] = ToolProperties['class']> {
  readonly id: string;
  readonly data: ToolData & { readonly properties: Extract<ToolProperties, { class: C }> };
  readonly certificates: readonly { readonly id: string; readonly data: CertificateData }[];
}

/** A tool of whichever class. */
export type AnyTool = { [C in ToolProperties['class']]: ToolOnRegister<C> }[ToolProperties['class']];

/** What turns the nut, in the cassette's place of a set. */
export type Head = ToolOnRegister<'cassette'> | ToolOnRegister<'square-drive head'>;

/** One wrench with the lines that feed it. */
export interface Wrench {
  readonly drive: ToolOnRegister<'drive unit'> | null;
  readonly cassette: Head | null;
  /** From the cassette towards the nut. */
  readonly reducers: readonly ToolOnRegister<'reducer'>[];
  readonly hoses: readonly ToolOnRegister<'hose'>[];
}

/** Wrenches on one pump and gauge. */
export interface ToolSet extends Wrench {
  readonly pump: ToolOnRegister<'pump'> | null;
  readonly gauge: ToolOnRegister<'gauge'> | null;
  readonly couplers: readonly ToolOnRegister<'coupler'>[];
  /** Holds the far nut. */
  readonly counterhold: ToolOnRegister<'counterhold wrench'> | null;
  /** More wrenches that turn at the same time. */
  readonly further: readonly Wrench[];
}

/** A set of which nothing is chosen. */
export const NO_SET: ToolSet = {
  drive: null,
  cassette: null,
  reducers: [],
  hoses: [],
  pump: null,
  gauge: null,
  couplers: [],
  counterhold: null,
  further: [],
};

/** Everything a setting card is computed from. Nothing is looked up behind it. */
export interface CardInput {
  readonly joint: { readonly id: string; readonly version: number; readonly data: JointData };
  readonly kind: WorkKind;
  /** Calendar dates YYYY-MM-DD in the site's time zone. */
  readonly startsOn: string;
  readonly endsOn: string;
  readonly planId: string;
  /** 0 for the joint's own bolting, 1 and up for its further bolt sets. */
  readonly boltSet: number;
  readonly method: Method;
  /** Tool without pressure; null for the other methods, or while it isn't entered. */
  readonly torqueTool: TorqueTool | null;
  /** The hand torque wrench of the register behind `torqueTool`; null when it is typed in. */
  readonly handWrench: ToolOnRegister<'hand torque wrench'> | null;
  readonly withUncertainty: boolean;
  /** The site's own rows, plan and confirmations, as far as this card rests on them. */
  readonly site: SiteTables;
  readonly set: ToolSet;
  /** Rules, checks and kits of the tool room, as far as the chosen tools are in them. */
  readonly toolRoom: ToolRoom;
  /** Heads and reducers on the register, so that a refusal can name the one that would fit. */
  readonly onRegister: {
    readonly cassettes: readonly Head[];
    readonly reducers: readonly ToolOnRegister<'reducer'>[];
  };
  /** Newest recorded tightening of this joint; null when none is known. */
  readonly lastTightening: {
    readonly torque: number;
    readonly happenedAt: string;
    readonly eventId: string;
  } | null;
}
