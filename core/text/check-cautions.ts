import type { CheckKind } from '../contract/check.ts';
import type { ToolClass } from '../contract/tool.ts';
import { REACTION_CAUTIONS } from './cautions.ts';

interface CheckCaution {
  readonly text: string;
  readonly source: string;
}

/** Classes that carry the pump’s pressure. */
const HYDRAULIC: readonly ToolClass[] = ['drive unit', 'pump', 'gauge', 'hose', 'coupler'];
/** Kinds for which the lines of a hydraulic tool are put under pressure. */
const PRESSURISED: readonly CheckKind[] = ['leak test', 'pressure test', 'comparison', 'function'];
const OPENED: readonly CheckKind[] = ['seal inspection', 'fasteners', 'cleaning and lubrication', 'repair'];

const COMMON = 'common practice';

const FIRST: CheckCaution = {
  text: 'Follow the tool’s own instructions and the site’s procedure. Pressure, time and what may be taken apart are theirs to say, and the competent person’s.',
  source: 'rule of this program',
};

const UNDER_PRESSURE: readonly CheckCaution[] = [
  {
    text: 'Look over hoses, couplers, swivels and fittings before pressure. With a cut, worn, kinked, blistered or leaking one no pressure is safe.',
    source: COMMON,
  },
  {
    text: 'Never go above the lowest-rated part that is connected. Set the relief valve first, with nothing loaded, then raise in steps.',
    source: COMMON,
  },
  {
    text: 'Stand out of line with hoses, couplers and travel, behind the guard. Nobody touches, tightens or leans over anything under pressure.',
    source: 'public safety guidance on powered torque tools',
  },
  {
    text: 'Never feel for a leak. Fluid under the skin is a surgical emergency even when it looks small.',
    source: 'public safety alerts on fluid injection',
  },
  {
    text: 'Bleed to zero and see it on the gauge before anything is touched or uncoupled.',
    source: 'ISO 4413, from memory',
  },
];

const OVER_RATING: CheckCaution = {
  text: 'A test above the working pressure is for whoever the site has named for it: liquid only, air bled out, the part shielded, nobody near while pressure is on.',
  source: COMMON,
};

const HAND: CheckCaution = {
  text: 'Stand firm and pull steadily: a square or a socket that breaks lets go at once. Hands clear of where the wrench bears.',
  source: COMMON,
};

const ZERO: CheckCaution = {
  text: 'The zero is looked at with the line bled and open. A pointer at zero is no proof that a closed line is without pressure.',
  source: COMMON,
};

const DEAD: readonly CheckCaution[] = [
  {
    text: 'Nothing is opened until the pump is off and secured, the gauge stands at zero and the lines are disconnected.',
    source: COMMON,
  },
  { text: 'Springs and pins can jump out. Protect the eyes and keep the face away.', source: COMMON },
];

const LUBRICANT: CheckCaution = {
  text: 'Lubricant goes only where the tool’s own instructions put it.',
  source: COMMON,
};

/**
 * Cautions at the bench for a kind of check on a class of tool, first the ones that come first.
 *
 * @param kind what is checked
 * @param toolClass class of the tool
 * @returns texts with their sources; the first defers to the tool’s own instructions
 * @example checkCautions('leak test', 'hose').some(({ text }) => text.includes('Never feel for a leak')) // true
 * @source each caution names its own
 */
export function checkCautions(kind: CheckKind, toolClass: ToolClass): CheckCaution[] {
  const hydraulic = HYDRAULIC.includes(toolClass);
  const pressurised = hydraulic && PRESSURISED.includes(kind);
  return [
    FIRST,
    ...(pressurised ? UNDER_PRESSURE : []),
    ...(kind === 'pressure test' ? [OVER_RATING] : []),
    ...(toolClass === 'drive unit' && (kind === 'comparison' || kind === 'function')
      ? REACTION_CAUTIONS
      : []),
    ...(toolClass === 'hand torque wrench' && (kind === 'comparison' || kind === 'function') ? [HAND] : []),
    ...(kind === 'zero of the gauge' ? [ZERO] : []),
    ...(hydraulic && OPENED.includes(kind) ? DEAD : []),
    ...(kind === 'cleaning and lubrication' ? [LUBRICANT] : []),
  ];
}
