import type { JointData, JointInput } from '../../../core/contract/joint.ts';
import { identityOf } from '../../../core/joint/identity.ts';
import { blank, orNull, type Typed, textOrNull, typed } from '../../components/typed.ts';

type IdentityInput = NonNullable<JointInput['identity']>;

export interface IdentityForm {
  type: string;
  system: string;
  line: string;
  drawing: string;
  revision: string;
  landmark: string;
  direction: string;
  distance: Typed;
  grid: string;
  valve: string;
  valveSide: string;
  /** Tags parted by semicolons; empty: not known. */
  neighbours: string;
  testPack: string;
  isolationBoundary: string;
  numberingMark: string;
  photo: string;
  confusableWith: { tag: string; tell: string }[];
  /** Somebody looked for joints it could be taken for and found none. */
  noneConfusable: boolean;
  /** Fields of the record that this joint has no answer to, each with its reason. */
  notApplicable: { field: string; reason: string }[];
}

export const EMPTY_IDENTITY: IdentityForm = {
  type: '',
  system: '',
  line: '',
  drawing: '',
  revision: '',
  landmark: '',
  direction: '',
  distance: blank('m'),
  grid: '',
  valve: '',
  valveSide: '',
  neighbours: '',
  testPack: '',
  isolationBoundary: '',
  numberingMark: '',
  photo: '',
  confusableWith: [],
  noneConfusable: false,
  notApplicable: [],
};

export function identityForm(data: JointData): IdentityForm {
  const identity = identityOf(data);
  const { confusableWith, neighbours, distance, type, valveSide, photo, ...words } = identity;
  return {
    ...words,
    type: type ?? '',
    distance: typed(distance, 'm'),
    valveSide: valveSide ?? '',
    neighbours: neighbours?.length === 0 ? NONE : (neighbours ?? []).join('; '),
    photo: photo ?? '',
    confusableWith: confusableWith ?? [],
    noneConfusable: confusableWith?.length === 0,
    notApplicable: identity.notApplicable ?? [],
  };
}

/** What is written where somebody looked and there is none. */
const NONE = 'none';

export function identityInput(form: IdentityForm): IdentityInput {
  const { confusableWith, noneConfusable, neighbours, distance, type, valveSide, photo, ...words } = form;
  return {
    ...words,
    notApplicable: form.notApplicable as IdentityInput['notApplicable'],
    type: textOrNull(type) as IdentityInput['type'],
    distance: orNull(distance),
    valveSide: textOrNull(valveSide) as IdentityInput['valveSide'],
    neighbours: listed(neighbours),
    photo: textOrNull(photo),
    confusableWith: confusableWith.length > 0 ? confusableWith : noneConfusable ? [] : null,
  };
}

function listed(text: string): string[] | null {
  const tags = text
    .split(';')
    .map((tag) => tag.trim())
    .filter((tag) => tag !== '');
  if (tags.length === 0) return null;
  return tags.length === 1 && tags[0]?.toLowerCase() === NONE ? [] : tags;
}
