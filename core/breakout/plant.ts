import { CLASS_JOINTS, CLASS_RULES, type ClassRule, type OpeningTraits } from './classes.ts';
import {
  type BoltScatter,
  boltScatter,
  type ClassFit,
  fitClass,
  type OpeningSummary,
  openingSummary,
  type Prior,
} from './model.ts';
import { plantPrior } from './prior.ts';
import type { SeizedCount } from './seized.ts';

/** One opening as the forecast looks at it. */
export interface PlantOpening {
  readonly joint: string;
  readonly traits: OpeningTraits;
  /** R of each bolt that turned and was read, 1, above 0. */
  readonly ratios: readonly number[];
  readonly studs: number;
  readonly seized: number;
}

/** Openings that belong together with what they say. */
export interface OpeningClass {
  readonly rule: ClassRule;
  readonly openings: readonly OpeningSummary[];
  readonly byJoint: ReadonlyMap<string, readonly OpeningSummary[]>;
  readonly seized: readonly SeizedCount[];
  readonly fit: ClassFit;
  readonly scatter: BoltScatter;
  readonly prior: Prior;
}

/** Every opening of a plant, put into classes by each rule; classes are fitted when they are first asked for. */
export interface PlantOpenings {
  /** The narrowest class with enough joints behind it. */
  classOf(traits: OpeningTraits): OpeningClass;
  /** The class of one rule, whatever is behind it. */
  classBy(rule: ClassRule, traits: OpeningTraits): OpeningClass;
}

interface Grouped {
  readonly openings: OpeningSummary[];
  readonly seized: SeizedCount[];
  readonly joints: Set<string>;
}

/**
 * Puts the openings of a plant into classes and fits them with the plant's own prior.
 *
 * @param openings every opening with a ratio or a stud that was tried
 * @param joints opened joints that a class needs to stand for itself, whole, at least 1
 * @returns classes by what a joint is
 * @example plantOpenings([]).classOf({ service: 'steam', band: 'not known', lubricant: null, years: null }).rule.name // 'the plant'
 * @source rule of this program: the narrowest class with enough joints behind it
 */
export function plantOpenings(
  openings: readonly PlantOpening[],
  joints: number = CLASS_JOINTS,
): PlantOpenings {
  const groups = new Map<ClassRule, Map<string, Grouped>>();
  for (const rule of CLASS_RULES) groups.set(rule, groupBy(rule, openings));
  const priors = new Map<ClassRule, Prior>();
  const fitted = new Map<ClassRule, Map<string, OpeningClass>>();
  const priorOf = (rule: ClassRule) => {
    const known = priors.get(rule);
    if (known !== undefined) return known;
    // The plant as one class has no others beside it: the classes by temperature stand for them.
    const from = rule.key === CLASS_RULES.at(-1)?.key ? CLASS_RULES.at(-2) : rule;
    const classes = [...(groups.get(from ?? rule)?.values() ?? [])].map((one) => one.openings);
    const prior = plantPrior(classes);
    priors.set(rule, prior);
    return prior;
  };
  const classBy = (rule: ClassRule, traits: OpeningTraits): OpeningClass => {
    const key = rule.key(traits);
    const known = fitted.get(rule)?.get(key);
    if (known !== undefined) return known;
    const group = groups.get(rule)?.get(key);
    const own = group?.openings ?? [];
    const prior = priorOf(rule);
    const fit = fitClass(own, prior);
    const made: OpeningClass = {
      rule,
      openings: own,
      byJoint: Map.groupBy(own, ({ joint }) => joint),
      seized: group?.seized ?? [],
      fit,
      scatter: boltScatter(fit, own),
      prior,
    };
    const byKey = fitted.get(rule) ?? new Map<string, OpeningClass>();
    fitted.set(rule, byKey.set(key, made));
    return made;
  };
  return {
    classBy,
    classOf(traits) {
      const rule = CLASS_RULES.find(
        (one) => (groups.get(one)?.get(one.key(traits))?.joints.size ?? 0) >= joints,
      );
      return classBy(rule ?? lastRule(), traits);
    },
  };
}

function lastRule(): ClassRule {
  const rule = CLASS_RULES.at(-1);
  if (rule === undefined) throw new Error('there is no rule for classes');
  return rule;
}

function groupBy(rule: ClassRule, openings: readonly PlantOpening[]): Map<string, Grouped> {
  const groups = new Map<string, Grouped>();
  for (const { joint, traits, ratios, studs, seized } of openings) {
    const key = rule.key(traits);
    let group = groups.get(key);
    if (group === undefined) {
      group = { openings: [], seized: [], joints: new Set() };
      groups.set(key, group);
    }
    const summary = openingSummary(joint, ratios);
    if (summary !== null) {
      group.openings.push(summary);
      group.joints.add(joint);
    }
    group.seized.push({ studs, seized });
  }
  return groups;
}
