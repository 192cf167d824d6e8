import { codeMinimum } from '../joint/code-minimum.ts';
import { checkBoltStress } from '../joint/component-checks.ts';
import { componentData } from '../joint/gaskets.ts';
import { areaOf } from '../joint/target.ts';
import type { Basis } from '../setting/basis.ts';
import type { CardInput } from '../setting/input.ts';
import { studStress } from '../setting/loads.ts';
import { siteLimitRows } from '../setting/site-limits.ts';
import type { LimitSubject } from '../uncertainty/probabilities.ts';

/** One limit of a joint as a bolt load. */
export interface JointLimit {
  readonly name: string;
  readonly side: 'least' | 'most';
  /** N per bolt */
  readonly limit: number;
  /** A bolt's limit concerns each bolt by itself, a gasket's and a flange's the mean of all. */
  readonly subject: LimitSubject;
}

/**
 * Limits of a joint that are known, as bolt loads: the site's, yield, gasket and flange, and the code's floor.
 *
 * @param data joint as a bolt set sees it
 * @param basis what the joint alone says
 * @returns limits in N per bolt; a limit nobody knows is left out, and none are known without a thread
 * @example jointLimits(complete.joint.data, basisOf(complete)).find(({ name }) => name === 'Yield strength, axial')?.side // 'most'
 * @source limits as entered; ASME PCC-1-2013, Appendix O (from memory); ASME BPVC VIII-1, Appendix 2 (second-hand)
 */
export function jointLimits(data: CardInput['joint']['data'], basis: Basis): JointLimit[] {
  const thread = basis.joint.thread?.value ?? null;
  if (thread === null) return [];
  const site = siteLimitRows(data, basis, studStress(basis, ANY_LOAD)).flatMap((row) => {
    if (row.limit === null) return [];
    const subject: LimitSubject = row.name.endsWith('flange') ? 'joint mean' : 'single bolt';
    return [limitOf(capital(row.name), row.side, row.limit * areaOf(thread, row.area), subject)];
  });
  // Several bolt sets load one gasket together: none of them alone says what is on it.
  return data.boltSets.length > 0 ? site : [...site, ...gasketLimits(data, basis)];
}

/** The limits themselves don't depend on the load they are shown with. */
const ANY_LOAD = 1;

function gasketLimits(data: CardInput['joint']['data'], { joint, gaskets }: Basis): JointLimit[] {
  return gaskets.flatMap((gasket) => {
    const component = componentData(data, joint, gasket);
    const root = component.boltRootArea;
    if (root === null) return [];
    const of = gaskets.length > 1 ? `, ${gasket.name}` : '';
    const checks = checkBoltStress(0, component).flatMap((check) => {
      if (check.limit === null) return [];
      const state = check.case === null ? '' : `, ${check.case}`;
      return [
        limitOf(`${capital(check.name)}${state}${of}`, check.side, check.limit * root, 'joint mean' as const),
      ];
    });
    const code =
      gasket.data.kind === null
        ? null
        : codeMinimum(
            gasket.contact,
            data.pressures.design.pressure?.si ?? null,
            gasket.values.factorM?.value ?? null,
            gasket.values.stressY?.value ?? null,
            joint.boltCount,
          ).value;
    return code === null
      ? checks
      : [...checks, limitOf(`Code minimum, a floor${of}`, 'at least', code.perBolt, 'joint mean')];
  });
}

function limitOf(
  name: string,
  side: 'at least' | 'at most',
  limit: number,
  subject: LimitSubject,
): JointLimit {
  return { name, side: side === 'at least' ? 'least' : 'most', limit, subject };
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
