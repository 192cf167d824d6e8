import type { Words } from './finding-facts.ts';

type LimitCode =
  | 'bolt_set_unknown'
  | 'gasket_target_unknown'
  | 'check_not_made'
  | 'gasket_target_not_reached'
  | 'gasket_stress_low'
  | 'gasket_stress_high'
  | 'flange_rotation_high'
  | 'joint_parts'
  | 'below_code_minimum'
  | 'hot_load_low'
  | 'above_yield_hot'
  | 'strip_margin_low'
  | 'flange_rating_exceeded';

/** The words of findings about gasket, pressure, temperature and thread. */
export const LIMIT_WORDS: Words<LimitCode> = {
  bolt_set_unknown: ({ index, sets }) => ({
    title: 'No such bolt set',
    detail:
      sets === 0
        ? `Bolt set ${index} is chosen; this joint has only one set of bolts.`
        : `Bolt set ${index} is chosen; this joint has ${sets} beside the first.`,
    remedy: 'Choose one of the joint’s bolt sets, or enter this one.',
  }),
  gasket_target_unknown: ({ needs }) => ({
    title: 'No bolt stress from the gasket',
    detail: 'The target starts from the gasket, and what it needs is not known.',
    remedy: `${sentence(needs)}.`,
  }),
  check_not_made: ({ check, needs }) => ({
    title: `Not checked: ${check}`,
    detail: 'What the check needs is not known. That is not a pass.',
    remedy: `${sentence(needs)}.`,
  }),
  gasket_target_not_reached: ({ asked, selected, governing }) => ({
    title: 'Gasket target not reached',
    detail: `The gasket asks for ${asked} in the bolts on the root area; ${governing} holds it at ${selected}.`,
    remedy: 'Have the limit reviewed, or choose a gasket that needs less.',
  }),
  gasket_stress_low: ({ gasket, what, stress, limit }) => ({
    title: `Bolt stress too low for the gasket: ${what}`,
    detail: `${gasket}: bolt stress on the root area ${stress}, at least ${limit} needed.`,
    remedy: 'Raise the target within its limits, or have the gasket’s data reviewed.',
  }),
  gasket_stress_high: ({ gasket, stress, limit }) => ({
    title: 'Bolt stress crushes the gasket',
    detail: `${gasket}: bolt stress on the root area ${stress}, at most ${limit} allowed.`,
    remedy: 'Lower the target, or choose a gasket that stands more.',
  }),
  flange_rotation_high: ({ gasket, stress, limit }) => ({
    title: 'Flange rotates farther than the gasket stands',
    detail: `${gasket}: bolt stress on the root area ${stress}, at most ${limit} allowed.`,
    remedy: 'Lower the target, or have flange and gasket reviewed.',
  }),
  joint_parts: ({ gasket, case: name, endForce, load }) => ({
    title: `Pressure parts the joint in the ${name} case`,
    detail: `${gasket}: end force ${endForce} per bolt, load left ${load} per bolt. The gasket carries nothing.`,
    remedy: 'Raise the target within its limits; have the pressure case checked.',
  }),
  below_code_minimum: ({ gasket, load, minimum, larger }) => ({
    title: 'Bolt load below the code’s minimum',
    detail: `${gasket}: ${load} per bolt, the code asks for ${minimum} (${larger}). That is a floor and a cross-check, not a target.`,
    remedy: 'Have target and design data checked by the engineer responsible for the joint.',
  }),
  hot_load_low: ({ load, needed }) => ({
    title: needed === null ? 'Bolt load may vanish hot' : 'Bolt load hot below what the gasket needs',
    detail:
      needed === null
        ? `Hot, as little as ${load} per bolt may be left.`
        : `Hot, as little as ${load} per bolt may be left; the gasket needs ${needed} in operation.`,
    remedy:
      'Have the joint calculated with its own stiffness; look at stud material and at spring-loaded bolting.',
  }),
  above_yield_hot: ({ share, temperature }) => ({
    title: 'Assembly stress above yield hot',
    detail: `Axial stress on the tensile area is ${share} of yield at ${temperature}. The stud would yield and lose load.`,
    remedy: 'Lower the target, or choose a grade for that temperature.',
  }),
  strip_margin_low: ({ weaker, margin }) => ({
    title: 'Thread strips before it carries this load',
    detail: `The ${weaker} strips at ${margin} times the bolt load.`,
    remedy: 'Check grade and height of the nut, and the engaged length.',
  }),
  flange_rating_exceeded: ({ case: name, pressure, rated, temperature }) => ({
    title: `Pressure above the flange’s rating in the ${name} case`,
    detail: `${pressure} at ${temperature}, rated ${rated}.`,
    remedy: 'Check class, material group and pressure case.',
  }),
};

function sentence(needs: readonly string[]): string {
  const [first, ...rest] = needs;
  if (first === undefined) return 'See the workings';
  let text = first.charAt(0).toUpperCase() + first.slice(1);
  for (const need of rest) text += `; ${need}`;
  return text;
}
