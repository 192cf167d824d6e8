import type { GasketView, LimitRow } from '../contract/card-views.ts';
import type { Working } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import type { InputGap } from '../findings/outcome.ts';
import { atJoint } from '../findings/raise.ts';
import type { Basis } from './basis.ts';
import { againstGasket } from './check-gasket.ts';
import type { CardInput } from './input.ts';
import { type LoadedGasket, loadGasket } from './loaded-gasket.ts';
import type { StudStress } from './loads.ts';
import { NO_WORKINGS, needsOf, notChecked, type Section } from './section.ts';
import { loadShared } from './shared-gasket.ts';
import { gasketWorkings } from './workings-gasket.ts';

/**
 * Part of the card on gaskets, pressure cases and the code’s floor under a bolt load.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param stress stresses of one stud, Pa, or null
 * @returns views, findings and workings; empty while load or thread are not known
 * @example gasketSection(complete, basisOf(complete), null).view.gaskets.length // 0
 * @source each working names its own
 */
export function gasketSection(
  input: CardInput,
  basis: Basis,
  stress: StudStress | null,
): Section<{ readonly gaskets: GasketView[]; readonly limits: () => LimitRow[] }> {
  const about = {
    subject: input.joint.data.tag,
    place: atJoint(input.joint.id, 'gasket'),
    source: 'ASME PCC-1-2013, Appendix O (from memory)',
  };
  const nothing = { gaskets: [], limits: () => [] };
  const { gaskets, others } = basis;
  if (gaskets.length === 0) {
    return {
      view: nothing,
      findings: notChecked('gasket and pressure', [NO_GASKET], about),
      workings: NO_WORKINGS,
    };
  }
  const unknownSets = others.flatMap(({ missing }) => missing);
  if (unknownSets.length > 0) {
    return {
      view: nothing,
      findings: notChecked('gasket and pressure', unknownSets, about),
      workings: NO_WORKINGS,
    };
  }
  // Without a load or a thread the findings about those stand alone.
  const root = stress?.root ?? null;
  if (stress === null || root === null) return { view: nothing, findings: [], workings: NO_WORKINGS };
  const look = others.length === 0 ? loadGasket : loadShared;
  const loaded = gaskets.map((gasket) => look(input, basis, gasket, stress.load, root));
  const findings: Raised[] = loaded.flatMap((one) => againstGasket(input, one, stress));
  const gaps = loaded.flatMap(waitsFor);
  return {
    view: {
      gaskets: loaded.map(({ view }) => view),
      limits: () => loaded.flatMap((one) => limitRows(one, loaded.length > 1, stress)),
    },
    findings: [...findings, ...notChecked('gasket and pressure', gaps, about)],
    workings: () => loaded.flatMap((one): Working[] => gasketWorkings(input, basis, one, stress)),
  };
}

function waitsFor({ gasket, checks, codeGaps }: LoadedGasket): InputGap[] {
  const gaps: InputGap[] = [...gasket.area.missing];
  for (const { missing } of checks) {
    // What the area itself waits for is on the list already.
    for (const gap of missing) if (gap.symbol !== 'Ag') gaps.push(gap);
  }
  gaps.push(...codeGaps);
  return gaps;
}

const NO_GASKET: InputGap = {
  symbol: '',
  name: 'gasket',
  reason: 'missing',
  given: null,
  allowed: '',
  remedy: 'enter it with its data sheet’s values',
};

function limitRows(
  { gasket, checks, view, component }: LoadedGasket,
  several: boolean,
  stress: StudStress,
): LimitRow[] {
  const name = several ? gasket.name : null;
  const source = gasket.data.source || 'gasket data';
  const rows = checks.map(
    ({ step, name: check, case: pressureCase, side, value, limit, state, missing }): LimitRow => ({
      name: check,
      step,
      case: pressureCase,
      gasket: name,
      side,
      area: 'root',
      value,
      limit,
      state,
      needs: needsOf(missing),
      source,
    }),
  );
  const minimum = view.codeMinimum?.perBolt ?? null;
  const root = component.boltRootArea;
  if (minimum === null || root === null || stress.root === null) return rows;
  const limit = minimum / root;
  return [
    ...rows,
    {
      name: 'code minimum, a floor and not a target',
      step: null,
      case: 'design',
      gasket: name,
      side: 'at least',
      area: 'root',
      value: stress.root,
      limit,
      state: stress.root >= limit * (1 - 1e-12) ? 'met' : 'not met',
      needs: [],
      source: 'ASME BPVC VIII-1, Appendix 2 (second-hand)',
    },
  ];
}
