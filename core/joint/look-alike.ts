import type { JointIdentity } from '../contract/identity.ts';
import { plainName, sameName } from '../text/same-name.ts';
import { describeIdentity } from './describe-identity.ts';
import { readAlike, sisterPart, tagDistance } from './tag.ts';

/** What a joint is compared by. */
export interface SeenJoint {
  readonly id: string;
  readonly tag: string;
  readonly unitId: string;
  readonly unitName: string;
  readonly service: string;
  /** Size and class, or the description, in words. */
  readonly flange: string;
  /** Number and thread of the bolts, in words. */
  readonly bolting: string;
  readonly location: string;
  readonly identity: JointIdentity;
  /** Whether it is shut off from pressure by the record of its states; null when not known. */
  readonly isolated: boolean | null;
}

export interface LookAlike {
  readonly joint: SeenJoint;
  /** Why one could be taken for the other, the strongest reason first. */
  readonly reasons: readonly string[];
  /** What somebody wrote down to tell them apart; empty when nobody has. */
  readonly tells: readonly string[];
  /** What the register knows to differ between them. */
  readonly differences: readonly Difference[];
  /** One is isolated and the other is not. */
  readonly oneIsLive: boolean;
}

export interface Difference {
  readonly what: string;
  /** Null: not known. */
  readonly here: string | null;
  readonly there: string | null;
}

interface Reason {
  readonly weight: number;
  readonly words: string;
}

/** Below this, two joints have no more in common than joints of a plant do. */
const ENOUGH = 40;

/** More than a person reads. */
const MOST = 12;

/**
 * Joints that could be taken for this one, the likeliest first: named as such, on the other side of the same valve,
 * of a tag that reads alike, at sister equipment, or of the same looks nearby. One that is live while this one is
 * isolated comes before others of its kind.
 *
 * @param own the joint worked on
 * @param others candidates of the register
 * @returns at most twelve, each with its reasons in words
 * @example lookAlikes(seen, [{ ...seen, id: 'x', tag: 'J-0002' }]).length // 1
 * @source published reports on opening the wrong joint, for the kinds of likeness; weights: rule of this program
 */
export function lookAlikes(own: SeenJoint, others: readonly SeenJoint[]): LookAlike[] {
  return others
    .filter(({ id }) => id !== own.id)
    .map((other) => ({ other, reasons: reasonsFor(own, other) }))
    .map(({ other, reasons }) => ({
      other,
      reasons: reasons.toSorted((a, b) => b.weight - a.weight),
      weight: reasons.reduce((sum, { weight }) => sum + weight, 0),
    }))
    .filter(({ weight }) => weight >= ENOUGH)
    .toSorted((a, b) => b.weight - a.weight || (a.other.tag < b.other.tag ? -1 : 1))
    .slice(0, MOST)
    .map(({ other, reasons }) => ({
      joint: other,
      reasons: reasons.map(({ words }) => words),
      tells: tellsOf(own, other),
      differences: differencesOf(own, other),
      oneIsLive: oneIsLive(own, other),
    }));
}

function reasonsFor(own: SeenJoint, other: SeenJoint): Reason[] {
  const likeness = [...named(own, other), ...valve(own, other), ...tags(own, other), ...looks(own, other)];
  const place = likeness.length === 0 ? [] : nearness(own, other);
  const state = likeness.length > 0 && oneIsLive(own, other) ? [liveReason(own)] : [];
  return [...likeness, ...place, ...state];
}

const oneIsLive = (own: SeenJoint, other: SeenJoint) =>
  own.isolated !== null && other.isolated !== null && own.isolated !== other.isolated;

const liveReason = (own: SeenJoint): Reason => ({
  weight: 40,
  words: own.isolated ? 'it is not isolated, and this one is' : 'it is isolated, and this one is not',
});

function named(own: SeenJoint, other: SeenJoint): Reason[] {
  const says = (one: SeenJoint, of: SeenJoint) =>
    (one.identity.confusableWith ?? []).some(({ tag }) => sameName(tag, of.tag));
  if (says(own, other)) return [{ weight: 100, words: 'named as a joint this one could be taken for' }];
  return says(other, own) ? [{ weight: 100, words: 'it names this joint as one it could be taken for' }] : [];
}

function valve(own: SeenJoint, other: SeenJoint): Reason[] {
  const { valve: name, valveSide: side } = own.identity;
  if (name === '' || !sameName(name, other.identity.valve)) return [];
  const otherSide = other.identity.valveSide;
  if (side !== null && otherSide !== null && side !== otherSide) {
    return [
      { weight: 90, words: `on another side of the same valve ${name}: ${otherSide}, this one ${side}` },
    ];
  }
  const known = side !== null && otherSide !== null;
  const words = known
    ? `both ${side} of the same valve ${name}`
    : `at the same valve ${name}, side not known`;
  return [{ weight: 60, words }];
}

function tags(own: SeenJoint, other: SeenJoint): Reason[] {
  if (readAlike(own.tag, other.tag)) {
    return [{ weight: 80, words: 'the tags read alike: figures and letters of the same shape' }];
  }
  const oneSlip = tagDistance(own.tag, other.tag) === 1;
  if (oneSlip && sameSigns(own.tag, other.tag)) {
    return [{ weight: 50, words: 'the tags differ by two characters swapped' }];
  }
  const sister = sisterPart(own.tag, other.tag);
  if (sister !== null) {
    const [here, there] = sister.map((part) => part.toUpperCase());
    return [{ weight: 30, words: `at a sister: ${there} in the tag where this one has ${here}` }];
  }
  return oneSlip ? [{ weight: 25, words: 'the tags differ by one character' }] : [];
}

const sameSigns = (a: string, b: string) =>
  [...plainName(a)].toSorted().join('') === [...plainName(b)].toSorted().join('');

function looks(own: SeenJoint, other: SeenJoint): Reason[] {
  if (own.flange !== other.flange) return [];
  const service = own.service !== '' && sameName(own.service, other.service);
  if (!service) return [{ weight: 10, words: `same flange: ${own.flange}` }];
  return [{ weight: 25, words: `same flange and service: ${own.flange}, ${own.service}` }];
}

/** What makes any other likeness worse. */
function nearness(own: SeenJoint, other: SeenJoint): Reason[] {
  const { line, landmark, neighbours } = own.identity;
  const next =
    (neighbours ?? []).some((tag) => sameName(tag, other.tag)) ||
    (other.identity.neighbours ?? []).some((tag) => sameName(tag, own.tag));
  if (next) return [{ weight: 25, words: 'next to it on the line' }];
  if (landmark !== '' && sameName(landmark, other.identity.landmark)) {
    return [{ weight: 25, words: `by the same landmark: ${landmark}` }];
  }
  return line !== '' && sameName(line, other.identity.line)
    ? [{ weight: 15, words: `on the same line: ${line}` }]
    : [];
}

/** Both joints’ own words count: what tells this one, and what tells the other. */
function tellsOf(own: SeenJoint, other: SeenJoint): string[] {
  const said = (one: SeenJoint, of: SeenJoint) =>
    (one.identity.confusableWith ?? []).filter(({ tag, tell }) => sameName(tag, of.tag) && tell !== '');
  return [
    ...said(own, other).map(({ tell }) => `${own.tag}: ${tell}`),
    ...said(other, own).map(({ tell }) => `${other.tag}: ${tell}`),
  ];
}

function differencesOf(own: SeenJoint, other: SeenJoint): Difference[] {
  const rows: [string, (joint: SeenJoint) => string | null][] = [
    ['Side of valve', ({ identity }) => describeIdentity(identity).valve],
    ['Landmark', ({ identity }) => describeIdentity(identity).landmark],
    ['Line or equipment', ({ identity }) => identity.line || null],
    ['Plant unit', ({ unitName }) => unitName],
    ['Flange', ({ flange }) => flange],
    ['Bolts', ({ bolting }) => bolting],
    ['Service', ({ service }) => service || null],
    ['Isolation boundary', ({ identity }) => identity.isolationBoundary || null],
    ['Where it is', ({ location }) => location || null],
  ];
  return rows.flatMap(([what, read]) => {
    const [here, there] = [read(own), read(other)];
    return here === there ? [] : [{ what, here, there }];
  });
}
