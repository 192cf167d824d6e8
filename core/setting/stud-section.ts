import { HALF_DIAMETER, type Stretch, stretch, studSections } from '../bolting/stiffness.ts';
import { nutProofLoad, SHEAR_SHARE_HANDBOOK, stripAreas, stripMargin } from '../bolting/strip.ts';
import type { StretchView, StripView } from '../contract/card-views.ts';
import type { Working } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import type { InputGap, Outcome } from '../findings/outcome.ts';
import { atJoint, raise } from '../findings/raise.ts';
import { showNumber } from '../text/number.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';
import { NO_WORKINGS, notChecked, type Section } from './section.ts';
import { stressUnit } from './show.ts';
import type { StudMaterial } from './stud-material.ts';
import { known, number, ofThread, result, words } from './working.ts';

/**
 * Part of the card on stretch and stripping of one stud.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param material modulus, expansion and yield of the stud, SI
 * @param load F, N, at least 0, or null when not known
 * @returns views, findings and workings
 * @example studSection(complete, basisOf(complete), studMaterial(complete, basisOf(complete)), null).view.stretch //
 * null
 * @source each working names its own
 */
export function studSection(
  input: CardInput,
  basis: Basis,
  material: StudMaterial,
  load: number | null,
): Section<{ readonly stretch: StretchView | null; readonly strip: StripView | null }> {
  if (load === null || basis.joint.thread === null) {
    return { view: { stretch: null, strip: null }, findings: [], workings: NO_WORKINGS };
  }
  const stretched = stretchOf(basis, load, material.modulus?.value ?? null);
  const strip = stripOf(basis, material, load);
  const stretchView =
    stretched.value === null
      ? null
      : {
          elongation: stretched.value.elongation,
          stiffness: stretched.value.stiffness,
          basis: HALF_DIAMETER.basis,
        };
  return {
    view: { stretch: stretchView, strip: strip.value },
    findings: stripFindings(input, strip),
    workings: () => [
      ...(stretchView === null ? [] : [stretchWorking(basis, material, load, stretchView)]),
      ...(strip.value === null ? [] : [stripWorking(input, basis, material, load, strip.value)]),
    ],
  };
}

/**
 * Stretch and stiffness of the stud between its nuts, half a diameter of each engaged end included.
 *
 * Equation: ΔL = F·Leff/(As·E), Leff = grip + D.
 * @param basis what the joint alone says
 * @param load F, N, at least 0, or null
 * @param modulus E, Pa, above 0, or null
 * @returns ΔL in m and kb in N/m; missing inputs named
 * @example stretchOf(basis, 107829, 202e9).value?.elongation // 0.195e-3 m
 * @source Hooke’s law; half a diameter in each nut: common practice
 */
export function stretchOf({ joint }: Basis, load: number | null, modulus: number | null): Outcome<Stretch> {
  const thread = joint.thread?.value;
  if (thread === undefined) return { value: null, missing: [THREAD] };
  const sections = studSections(thread, joint.grip?.value ?? null, null, HALF_DIAMETER);
  return sections.value === null ? sections : stretch(load, sections.value, modulus);
}

const THREAD: InputGap = {
  symbol: '',
  name: 'thread',
  reason: 'missing',
  given: null,
  allowed: '',
  remedy: 'enter the thread of the stud',
};

const NUT: InputGap = { ...THREAD, name: 'nut', remedy: 'choose the nut series' };

function stripOf(basis: Basis, material: StudMaterial, load: number): Outcome<StripView> {
  const { thread, nut } = basis.joint;
  if (thread === null) return { value: null, missing: [THREAD] };
  if (nut === null) return { value: null, missing: [NUT] };
  const areas = stripAreas(thread.value, nut.value.height);
  if (areas.value === null) return areas;
  const { tensile, nutTensile, nutProof } = material;
  const byStrength = (nutStrength: number | null) =>
    stripMargin(load, areas.value, tensile?.value ?? null, nutStrength, SHEAR_SHARE_HANDBOOK);
  const engaged = 'engaged over the nut’s largest height, countersinks not taken off';
  if (nutTensile === null && nutProof !== null) {
    // The stud's own strength fills the nut's place here; only the stud's side of the answer is read.
    const stud = byStrength(tensile?.value ?? null);
    const proof = nutProofLoad(nutProof.value, thread.value);
    if (stud.value === null) return stud;
    if (proof.value === null) return proof;
    const { studLoad } = stud.value;
    return {
      value: {
        studLoad,
        nutLoad: proof.value,
        weaker: studLoad <= proof.value ? 'stud thread' : 'nut thread',
        margin: Math.min(studLoad, proof.value) / load,
        basis: `stud: ${stud.value.basis}; nut: proof load of ${nutProof.source}; ${engaged}`,
      },
      missing: [],
    };
  }
  const margin = byStrength(nutTensile?.value ?? null);
  if (margin.value === null) return margin;
  return { value: { ...margin.value, basis: `${margin.value.basis}; ${engaged}` }, missing: [] };
}

function stripFindings(input: CardInput, strip: Outcome<StripView>): Raised[] {
  const about = {
    subject: input.joint.data.tag,
    place: atJoint(input.joint.id, 'nutGrade'),
    source: 'FED-STD-H28/2B (second-hand)',
  };
  if (strip.value === null) return notChecked('thread stripping', strip.missing, about);
  const { margin, weaker } = strip.value;
  if (margin >= 1) return [];
  return [
    raise('strip_margin_low', () => ({ weaker, margin: showNumber(margin, 3) }), {
      ...about,
      severity: 'refusal',
      value: margin,
      limit: 1,
      unit: 'one',
    }),
  ];
}

function stretchWorking(
  { joint }: Basis,
  { modulus }: StudMaterial,
  load: number,
  view: StretchView,
): Working {
  const thread = joint.thread?.value ?? null;
  return {
    of: 'stretch',
    title: 'Stretch of one stud',
    relation: 'ΔL = F · ( L + D ) / ( As · E ),  kb = F / ΔL',
    inputs: [
      number('F', 'load per stud', load, 'kN', 'calculated', 'load per stud'),
      known('L', 'grip length', joint.grip, joint.grip?.value ?? null, 'mm'),
      known('D', 'nominal diameter', joint.thread, thread?.diameter ?? null, 'mm'),
      ofThread('As', thread),
      known('E', 'modulus of the stud', modulus, modulus?.value ?? null, 'MPa'),
      words('', 'allowance', view.basis, 'assumed', 'common practice'),
      number('kb', 'stiffness of one stud', view.stiffness, 'kN/mm', 'calculated', 'this working'),
    ],
    result: result('ΔL', 'stretch', view.elongation, 'mm'),
    source: 'Hooke’s law',
  };
}

function stripWorking(
  input: CardInput,
  { joint }: Basis,
  { tensile, nutTensile, nutProof }: StudMaterial,
  load: number,
  view: StripView,
): Working {
  const unit = stressUnit(input);
  return {
    of: 'strip',
    title: 'Margin against stripping',
    relation:
      nutTensile === null
        ? 'margin = min( c · Rm · AS, Sp · As ) / F'
        : 'margin = min( c · Rm · AS ) / F over stud and nut thread',
    inputs: [
      number('F', 'load per stud', load, 'kN', 'calculated', 'load per stud'),
      known('Rm', 'tensile strength of the stud', tensile, tensile?.value ?? null, unit),
      nutTensile === null
        ? known('Sp', 'proof stress of the nut', nutProof, nutProof?.value ?? null, unit)
        : known('Rm', 'tensile strength of the nut', nutTensile, nutTensile.value, unit),
      number('c', 'shear over tensile strength', SHEAR_SHARE_HANDBOOK, 'one', 'assumed', 'handbook rule'),
      known('Le', 'engaged length', joint.nut, joint.nut?.value.height ?? null, 'mm'),
      number('', 'load that strips the stud’s thread', view.studLoad, 'kN', 'calculated', view.basis),
      number('', 'load that strips the nut’s thread', view.nutLoad, 'kN', 'calculated', view.basis),
    ],
    result: result('', `margin of the ${view.weaker}`, view.margin, 'one'),
    source: 'FED-STD-H28/2B and ASME B1.1-2003, Appendix B (second-hand)',
  };
}
