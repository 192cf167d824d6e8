import type { SettingCard } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import { atJoint, raise } from '../findings/raise.ts';
import { showQuantity } from '../text/number.ts';
import type { Basis } from './basis.ts';
import { checkMaterials } from './check-materials.ts';
import { gasketSection } from './gasket-section.ts';
import { hotSection } from './hot-section.ts';
import type { CardInput } from './input.ts';
import type { StudStress } from './loads.ts';
import { ratingSection } from './rating-section.ts';
import { retighteningView } from './rules-section.ts';
import { NO_WORKINGS, needsOf, type Section } from './section.ts';
import { stressUnit } from './show.ts';
import { siteLimitRows } from './site-limits.ts';
import { splitOf, splitWorking } from './split.ts';
import { studMaterial } from './stud-material.ts';
import { studSection } from './stud-section.ts';

type Views = Pick<
  SettingCard,
  | 'split'
  | 'selection'
  | 'limits'
  | 'gaskets'
  | 'strength'
  | 'hot'
  | 'stretch'
  | 'strip'
  | 'rating'
  | 'retightening'
>;

/** What a tightening card says beside dial and passes. */
export interface Sections extends Omit<Section<Views>, 'view'> {
  /** Put together only for a card, as the workings are. */
  readonly view: () => Views;
}

/** A breakout card has none of it: nothing is brought in. */
export const NO_SECTIONS: Sections = {
  view: () => ({
    split: null,
    selection: null,
    limits: [],
    gaskets: [],
    strength: [],
    hot: null,
    stretch: null,
    strip: null,
    rating: [],
    retightening: null,
  }),
  findings: [],
  workings: NO_WORKINGS,
};

/**
 * Parts of the card on limits, gasket, heat, thread and flange under its load.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param stress stresses of one stud, Pa, or null
 * @param torque T, N·m, at least 0, or null when not known
 * @returns views, findings and workings of all parts
 * @example sectionsOf(complete, basisOf(complete), null, null).view().split // null
 * @source each working names its own
 */
export function sectionsOf(
  input: CardInput,
  basis: Basis,
  stress: StudStress | null,
  torque: number | null,
): Sections {
  const tensioned = input.method === 'tensioner';
  const load = stress?.load ?? null;
  const gasket = gasketSection(input, basis, stress);
  const material = studMaterial(input, basis);
  const hot = hotSection(input, basis, material, stress);
  const stud = studSection(input, basis, material, load);
  const rating = ratingSection(input);
  const split = tensioned ? null : splitOf(basis, load);
  const siteRows = () => (stress === null ? [] : siteLimitRows(input.joint.data, basis, stress));
  return {
    view: () => ({
      split,
      selection: selectionView(basis),
      limits: [...siteRows(), ...gasket.view.limits()],
      gaskets: gasket.view.gaskets,
      ...hot.view,
      ...stud.view,
      rating: rating.view,
      retightening: retighteningView(input, torque),
    }),
    findings: [
      ...selectionFindings(input, basis),
      ...gasket.findings,
      ...hot.findings,
      ...stud.findings,
      ...rating.findings,
      ...checkMaterials(input, material, {
        stretch: stud.view.stretch !== null,
        strip: stud.view.strip !== null,
        hot: hot.view.hot !== null,
        strength: hot.view.strength.length > 0,
      }),
    ],
    workings: () => [
      ...(split === null || load === null ? [] : [splitWorking(input, basis, load, split)]),
      ...gasket.workings(),
      ...hot.workings(),
      ...stud.workings(),
      ...rating.workings(),
    ],
  };
}

function selectionView({ selection }: Basis): Views['selection'] {
  if (selection === null || selection.asked === null) return null;
  const { asked, gasket, selected, governing, targetReached, steps } = selection;
  return { asked, gasket, selected, governing, targetReached, steps: steps.map((step) => ({ ...step })) };
}

/** A target that starts from the gasket: what it waits for, and whether a limit holds it down. */
function selectionFindings(input: CardInput, { selection }: Basis): Raised[] {
  if (selection === null) return [];
  const { tag } = input.joint.data;
  const source = 'ASME PCC-1-2013, Appendix O (from memory)';
  if (selection.missing.length > 0) {
    return [
      raise('gasket_target_unknown', () => ({ needs: needsOf(selection.missing) }), {
        severity: 'refusal',
        subject: tag,
        place: atJoint(input.joint.id, 'gasket'),
        source,
      }),
    ];
  }
  const { asked, selected, governing } = selection;
  if (selection.targetReached !== false || asked === null || selected === null) return [];
  const unit = stressUnit(input);
  return [
    raise(
      'gasket_target_not_reached',
      () => ({
        asked: showQuantity(asked, unit),
        selected: showQuantity(selected, unit),
        governing: governing ?? 'a limit',
      }),
      {
        severity: 'warning',
        subject: tag,
        place: atJoint(input.joint.id, 'limits'),
        source,
        value: selected,
        limit: asked,
        unit,
      },
    ),
  ];
}
