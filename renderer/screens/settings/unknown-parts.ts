import type { SettingCard } from '../../../core/contract/setting.ts';

/** A part of the card that stays empty, what would fill it, and the field of the joint where that is entered. */
export interface UnknownPart {
  readonly name: string;
  readonly takes: string;
  readonly field: string;
}

type Part = UnknownPart & { readonly missing: (card: SettingCard) => boolean };

const PARTS: readonly Part[] = [
  {
    name: 'Limits of stud, flange and gasket',
    takes: 'the site’s bolt limits, or the gasket’s data sheet and pressure cases',
    field: 'limits.boltStressMax',
    missing: ({ limits }) => limits.length === 0,
  },
  {
    name: 'Gasket stress and code minimum',
    takes: 'the gasket’s kind, contact diameters, m and y',
    field: 'gasket',
    missing: ({ gaskets }) => gaskets.length === 0,
  },
  {
    name: 'Where the torque goes',
    takes: 'K or both friction coefficients, and a thread of the tables',
    field: 'lubricant',
    missing: ({ split, method }) => split === null && method !== 'tensioner',
  },
  {
    name: 'Load hot',
    takes: 'stud and flange temperature, both expansions and the stud’s modulus',
    field: 'hot',
    missing: ({ hot }) => hot === null,
  },
  {
    name: 'Stretch of the stud',
    takes: 'grip length and the stud’s modulus',
    field: 'bolting.grip',
    missing: ({ stretch }) => stretch === null,
  },
  {
    name: 'Stripping of the thread',
    takes: 'tensile strength of stud and nut',
    field: 'bolting.tensileStrength',
    missing: ({ strip }) => strip === null,
  },
  {
    name: 'Rating of the flange',
    takes: 'the flange’s material group and its pressure cases',
    field: 'pressures',
    missing: ({ rating }) => rating.length === 0,
  },
];

/** Parts of a tightening card that are not known yet; a breakout has none of them. */
export function unknownParts(card: SettingCard): UnknownPart[] {
  if (card.kind === 'breakout') return [];
  return PARTS.filter((part) => part.missing(card)).map(({ name, takes, field }) => ({ name, takes, field }));
}
