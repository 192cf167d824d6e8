import type { Raised } from '../findings/finding.ts';
import { atSettings, raise } from '../findings/raise.ts';
import { showEntered, showQuantity } from '../text/number.ts';
import { openingOf, seat } from '../tools/fit.ts';
import type { Basis } from './basis.ts';
import { loosenessUnknown } from './check-fit.ts';
import type { CardInput } from './input.ts';

/**
 * Whether the wrench that holds the far nut is there and fits it. Its rating is looked at with the other parts.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @returns findings; none when nothing stands against it
 * @example checkCounterhold({ ...complete, set: { ...complete.set, counterhold: null } }, basisOf(complete))[0].severity // 'note'
 * @source nominal sizes of the nut standard; the far nut taken as the near one
 */
export function checkCounterhold(input: CardInput, { joint }: Basis): Raised[] {
  const { counterhold } = input.set;
  const place = atSettings('counterholdId');
  if (counterhold === null) {
    return [
      raise('counterhold_missing', () => ({}), {
        severity: 'note',
        subject: input.joint.data.tag,
        place,
        source: 'common practice',
      }),
    ];
  }
  const nut = joint.nut?.value ?? null;
  const { acrossFlats, looseness } = counterhold.data.properties;
  const sits = nut === null ? 'fits' : seat(openingOf(counterhold), nut.acrossFlats);
  if (nut === null || sits === 'fits') return looseness === null ? [loosenessUnknown(counterhold)] : [];
  return [
    raise(
      'counterhold_does_not_fit',
      () => ({
        opening: showEntered(acrossFlats),
        nut: showQuantity(nut.acrossFlats, nut.series === 'ASME B18.2.2 heavy hex' ? 'in' : 'mm', 5),
        sits,
      }),
      {
        severity: 'refusal',
        subject: counterhold.data.number,
        place,
        source: nut.source,
        value: acrossFlats.si,
        limit: nut.acrossFlats,
        unit: 'mm',
      },
    ),
  ];
}
