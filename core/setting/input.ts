import type { JointData } from '../contract/joint.ts';
import type { Method, TorqueTool, WorkKind } from '../contract/setting.ts';
import type { CertificateData, ToolData, ToolProperties } from '../contract/tool.ts';
import type { SiteTables } from '../joint/site-tables.ts';

/** A tool with every certificate on the register that hangs on it, newest calibration last. */
export interface ToolOnRegister<C extends ToolProperties['class'] = ToolProperties['class']> {
  readonly id: string;
  readonly data: ToolData & { readonly properties: Extract<ToolProperties, { class: C }> };
  readonly certificates: readonly { readonly id: string; readonly data: CertificateData }[];
}

/** A tool of whichever class. */
export type AnyTool = { [C in ToolProperties['class']]: ToolOnRegister<C> }[ToolProperties['class']];

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
  readonly withUncertainty: boolean;
  /** The site's own rows, plan and confirmations, as far as this card rests on them. */
  readonly site: SiteTables;
  readonly set: {
    readonly drive: ToolOnRegister<'drive unit'> | null;
    readonly cassette: ToolOnRegister<'cassette'> | null;
    /** From the cassette towards the nut. */
    readonly reducers: readonly ToolOnRegister<'reducer'>[];
    readonly pump: ToolOnRegister<'pump'> | null;
    readonly gauge: ToolOnRegister<'gauge'> | null;
    readonly hoses: readonly ToolOnRegister<'hose'>[];
  };
  /** Cassettes and reducers on the register, so that a refusal can name the one that would fit. */
  readonly onRegister: {
    readonly cassettes: readonly ToolOnRegister<'cassette'>[];
    readonly reducers: readonly ToolOnRegister<'reducer'>[];
  };
  /** Newest recorded tightening of this joint; null when none is known. */
  readonly lastTightening: {
    readonly torque: number;
    readonly happenedAt: string;
    readonly eventId: string;
  } | null;
}
