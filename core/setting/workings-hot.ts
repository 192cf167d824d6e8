import type { HotView, StrengthRow } from '../contract/card-views.ts';
import type { Working } from '../contract/setting.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';
import type { StudStress } from './loads.ts';
import { stressUnit } from './show.ts';
import type { StudMaterial } from './stud-material.ts';
import { known, number, result, words } from './working.ts';

/**
 * Shows the shares of yield at assembly and in operation.
 *
 * @param input input of the card
 * @param rows strength rows of the card
 * @param stress stresses of one stud, Pa
 * @returns workings, each naming its relation, inputs and source
 * @example strengthWorkings(complete, [], stress).length // 0
 * @source each working names its own
 */
export function strengthWorkings(
  input: CardInput,
  rows: readonly StrengthRow[],
  stress: StudStress,
): Working[] {
  const unit = stressUnit(input);
  return rows.flatMap((row): Working[] => {
    if (row.axialOfYield === null) return [];
    return [
      {
        of: 'strength',
        title: row.state === 'assembly' ? 'Share of yield at assembly' : 'Share of yield in operation',
        relation: 'x = σ / Re',
        inputs: [
          number(
            'σ',
            'stress on the tensile area at assembly',
            stress.tensile,
            unit,
            'calculated',
            'load per stud',
          ),
          number('Re', 'yield strength', row.yield, unit, row.origin, row.source),
          number('T', 'temperature', row.temperature, 'degC', 'entered', 'joint data'),
        ],
        result: result('x', 'share of yield', row.axialOfYield, 'percent'),
        source: 'definition; the stud is taken to carry its whole assembly load',
      },
    ];
  });
}

/**
 * Shows the change of the load by unequal growth of stud and flanges.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param material modulus and expansion of stud and flange, SI
 * @param load F at assembly, N, at least 0
 * @param view load hot as the card shows it
 * @returns working with growths and stiffnesses
 * @example hotWorking(complete, basisOf(complete), studMaterial(complete, basisOf(complete)), 107829,
 * settingCard(complete).hot).of // 'hotLoad'
 * @source each working names its own
 */
export function hotWorking(
  input: CardInput,
  { joint }: Basis,
  { modulus, modulusHot, expansion, flangeExpansion }: StudMaterial,
  load: number,
  view: HotView,
): Working {
  const { hot } = input.joint.data;
  const source = hot.source || 'joint data';
  const temperature = (symbol: string, name: string, value: { readonly si: number } | null) =>
    number(symbol, name, value?.si ?? null, 'degC', 'entered', source);
  return {
    of: 'hotLoad',
    title: 'Bolt load hot',
    relation:
      'Δ = Σ αi · Li · ΔTi − αb · L · ΔTb;  Fhot = ( F · ( 1/kb + 1/kj ) + Δ ) / ( 1/kb,hot + 1/kj );  rigid joint: 1/kj = 0',
    inputs: [
      number('F', 'load per stud at assembly', load, 'kN', 'calculated', 'load per stud'),
      known('L', 'grip length', joint.grip, joint.grip?.value ?? null, 'mm'),
      known('αb', 'expansion of the stud', expansion, expansion?.value ?? null, 'um/m.K'),
      known('αf', 'expansion of the flanges', flangeExpansion, flangeExpansion?.value ?? null, 'um/m.K'),
      temperature('T0', 'metal at assembly', hot.assemblyTemperature),
      temperature('Tb', 'metal of the stud hot', hot.boltTemperature),
      temperature('Tf', 'metal of the flanges hot', hot.flangeTemperature),
      known('E', 'modulus of the stud', modulus, modulus?.value ?? null, 'MPa'),
      known('E hot', 'modulus of the stud hot', modulusHot, modulusHot?.value ?? null, 'MPa'),
      number(
        'kj',
        'stiffness of the joint per stud',
        hot.jointStiffness?.si ?? null,
        'kN/mm',
        'entered',
        source,
      ),
      number(
        'Δ',
        'growth of the parts beyond the stud’s',
        view.difference,
        'mm',
        'calculated',
        'this working',
      ),
      number('', 'least load of the range', view.range[0], 'kN', 'calculated', 'this working'),
      number('', 'most load of the range', view.range[1], 'kN', 'calculated', 'this working'),
      words('', 'basis', view.basis, 'calculated', 'this working'),
    ],
    result: result('Fhot', 'load hot', view.hotLoad, 'kN'),
    source: 'compatibility of lengths of members in series',
  };
}
