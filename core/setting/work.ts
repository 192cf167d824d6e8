import type { PassRow, SettingCard, Working } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import type { PassPressure } from './check-certificates.ts';
import type { Dialled } from './hydraulics.ts';

/** What tightening and breakout each contribute to the card. */
export interface Work {
  readonly planName: string;
  /** Torque the final or first pressure is meant to give, N·m. */
  readonly torque: number | null;
  readonly dialled: Dialled | null;
  /** What to set on a tool without pressure; null for the hydraulic wrench. */
  readonly toolSetting: SettingCard['toolSetting'];
  /** Load the card speaks of, N, and how it is called in the workings. */
  readonly load: number | null;
  readonly loadName: string;
  readonly passes: readonly PassRow[];
  /** True pressures that are dialled, Pa; none without a pressure. */
  readonly pressures: readonly PassPressure[];
  readonly breakout: SettingCard['breakout'];
  readonly findings: readonly Raised[];
  /** Spelled out only for a card: a person reads them, no check does. */
  readonly workings: () => readonly (Working | null)[];
}
