import type { FieldStanding } from '../../../core/contract/record.ts';

export interface PlaceLink {
  /** Words after "Enter". */
  readonly words: string;
  /** Null where it is entered with a record that has no page of its own. */
  readonly href: string | null;
}

/** Where a missing field is entered, as a link where there is a page for it. */
export function placeOf(place: FieldStanding['place'], jointId: string): PlaceLink {
  const joint = `/joints/${jointId}`;
  switch (place.at) {
    case 'joint':
      return { words: 'on the joint', href: `${joint}/edit/${place.field}` };
    case 'step':
      return {
        words: `with the step “${place.step}”`,
        href: `${joint}/step/${place.step.replaceAll(' ', '-')}`,
      };
    case 'setting':
      return { words: 'by issuing a setting', href: `${joint}/setting` };
    case 'tightening':
      return { words: 'with the tightening', href: `${joint}/record/tightening` };
    case 'breakout':
      return { words: 'with the breakout', href: `${joint}/record/breakout` };
    case 'pass':
      return { words: 'pass by pass, at the joint', href: null };
    case 'people':
      return { words: 'with the person', href: '/people' };
    case 'signature':
      return { words: 'by signing the record', href: null };
  }
}
