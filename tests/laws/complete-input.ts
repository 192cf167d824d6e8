import type { WorkKind } from '../../core/contract/setting.ts';
import type { CardInput } from '../../core/setting/input.ts';
import { typed } from '../truth/entered.ts';
import { workedJointA } from '../truth/worked-joint-a.ts';

type Draft<T> = T extends object ? { -readonly [K in keyof T]: Draft<T[K]> } : T;
export type InputDraft = Draft<CardInput>;

/** A copy of an input with changes made to it. */
export function changed(input: CardInput, change: (draft: InputDraft) => void): CardInput {
  const draft = structuredClone(input) as InputDraft;
  change(draft);
  return draft as CardInput;
}

/** Everything known and in order: the card has nothing to say about it. */
export function completeInput(kind: WorkKind): CardInput {
  return changed(workedJointA(), (input) => {
    input.kind = kind;
    Object.assign(input.joint.data.bolting, {
      count: 12,
      thread: '7/8-9 UNC',
      circle: typed('330.2', 'mm'),
      studLength: typed('145', 'mm'),
    });
    Object.assign(input.joint.data.limits, {
      boltStressMax: typed('500', 'MPa'),
      boltStressMin: typed('150', 'MPa'),
      boltStressArea: 'tensile',
      flangeBoltStressMax: typed('450', 'MPa'),
      source: 'site limits',
    });
    input.joint.data.space.radialGap = typed('60', 'mm');
    const gauge = input.set.gauge?.certificates[0]?.data.measured;
    if (gauge?.kind === 'gauge') {
      gauge.points = ['0', '300', '600', '1000'].map((bar) => ({
        indicated: typed(bar, 'bar'),
        reference: typed(bar, 'bar'),
      }));
    }
    if (kind === 'breakout' && input.set.gauge !== null) {
      // The clean loosening torque needs less pressure: a shorter scale with finer marks reads it well.
      const { properties } = input.set.gauge.data;
      properties.scaleMax = typed('600', 'bar');
      properties.graduation = typed('5', 'bar');
      input.lastTightening = { torque: 280, happenedAt: '2025-05-04T10:00:00+02:00', eventId: 'invented' };
    }
  });
}
