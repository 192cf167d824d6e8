import { useFieldArray, useFormContext, useWatch } from 'react-hook-form';
import type { ReferenceChoices } from '../../../core/contract/register.ts';
import { Choice, Quantity, same, Text } from '../../components/fields.tsx';
import { Fold } from '../../components/fold.tsx';
import { BoltSetFields } from './bolt-set-fields.tsx';
import { EMPTY_BOLT_SET } from './bolting-form-values.ts';
import { GasketDataFields } from './gasket-fields.tsx';
import { EMPTY_GASKET } from './gasket-form-values.ts';
import type { JointForm } from './joint-form-values.ts';
import { PRESSURE_CASES } from './service-form-values.ts';

/** What most joints leave empty: folded, in the order of the joint page. */
export function MoreFields({ choices }: { readonly choices: ReferenceChoices }) {
  return (
    <div>
      <Fold title="Gasket data sheet" under={['gasket.']} except={['gasket.type', 'gasket.thickness']}>
        <GasketDataFields name="gasket" />
      </Fold>
      <FurtherGaskets />
      <Fold title="Pressure cases" under={['pressures', 'flangeMaterial']}>
        <div className="fields">
          {PRESSURE_CASES.map((each) => (
            <PressureCase key={each} name={each} />
          ))}
          <Text name="flangeMaterial" label="Flange material group" hint="As the rating tables name it" />
          <Text name="pressures.source" label="Source of the pressures" />
        </div>
      </Fold>
      <Fold title="Hot service" under={['hot']}>
        <p className="small lead-in">Metal temperatures, not the fluid’s.</p>
        <div className="fields">
          <Quantity name="hot.assemblyTemperature" label="Temperature at assembly" quantity="temperature" />
          <Quantity name="hot.boltTemperature" label="Stud temperature" quantity="temperature" />
          <Quantity name="hot.flangeTemperature" label="Flange temperature" quantity="temperature" />
          <Quantity name="hot.boltExpansion" label="Expansion of the stud" quantity="expansion" />
          <Quantity name="hot.flangeExpansion" label="Expansion of the flange" quantity="expansion" />
          <Quantity name="hot.boltModulus" label="Modulus of the stud, assembly" quantity="stress" />
          <Quantity name="hot.boltModulusHot" label="Modulus of the stud, hot" quantity="stress" />
          <Quantity name="hot.boltYieldHot" label="Yield strength of the stud, hot" quantity="stress" />
          <Quantity
            name="hot.jointStiffness"
            label="Stiffness of the joint"
            quantity="stiffness"
            hint="Flanges and gasket, for one stud"
          />
          <Text name="hot.source" label="Source of the hot data" />
        </div>
      </Fold>
      <Fold title="Retightening" under={['retightening']}>
        <p className="small lead-in">
          What the site’s procedure says. Nothing entered here allows a retightening.
        </p>
        <div className="fields">
          <Text name="retightening.procedure" label="Procedure of the site" />
          <Quantity name="retightening.from" label="Stud temperature, from" quantity="temperature" />
          <Quantity name="retightening.to" label="Stud temperature, to" quantity="temperature" />
          <Choice
            name="retightening.gasketExcluded"
            label="Gasket excluded from retightening hot"
            options={same(['yes', 'no'])}
            blank="Not known yet"
          />
        </div>
      </Fold>
      <BoltSets choices={choices} />
    </div>
  );
}

function PressureCase({ name }: { readonly name: (typeof PRESSURE_CASES)[number] }) {
  const label = `${name[0]?.toUpperCase()}${name.slice(1)}`;
  return (
    <>
      <Quantity name={`pressures.${name}.pressure`} label={`${label} pressure`} quantity="pressure" />
      <Quantity
        name={`pressures.${name}.temperature`}
        label={`${label} temperature of the fluid`}
        quantity="temperature"
      />
    </>
  );
}

const MOST_FURTHER_GASKETS = 3;

function FurtherGaskets() {
  const { control } = useFormContext<JointForm>();
  const rows = useFieldArray({ control, name: 'furtherGaskets' });
  return (
    <Fold title="Further gaskets in series" under={['furtherGaskets']}>
      <p className="small lead-in">
        {rows.fields.length === 0
          ? 'One gasket, or none known. Each gasket of a series carries the whole bolt load.'
          : `${rows.fields.length + 1} gaskets in series. Each carries the whole bolt load.`}
      </p>
      {rows.fields.map((row, at) => (
        <fieldset key={row.id}>
          <legend>Gasket {at + 2}</legend>
          <div className="fields">
            <Text name={`furtherGaskets.${at}.type`} label={`Type of gasket ${at + 2}`} />
            <Quantity
              name={`furtherGaskets.${at}.thickness`}
              label={`Thickness of gasket ${at + 2}`}
              quantity="length"
            />
          </div>
          <GasketDataFields name={`furtherGaskets.${at}`} of={` of gasket ${at + 2}`} />
          <button type="button" className="link small" onClick={() => rows.remove(at)}>
            Take gasket {at + 2} away
          </button>
        </fieldset>
      ))}
      {rows.fields.length < MOST_FURTHER_GASKETS && (
        <button type="button" className="quiet" onClick={() => rows.append(EMPTY_GASKET)}>
          Add a gasket
        </button>
      )}
    </Fold>
  );
}

const MOST_BOLT_SETS = 8;

function BoltSets({ choices }: { readonly choices: ReferenceChoices }) {
  const { control } = useFormContext<JointForm>();
  const rows = useFieldArray({ control, name: 'boltSets' });
  const sets = useWatch({ control, name: 'boltSets' });
  return (
    <Fold title="Further bolt sets" under={['boltSets']}>
      <p className="small lead-in">
        Further bolts of this joint with a size, circle or load of their own. Each set gets its own setting.
      </p>
      {rows.fields.map((row, at) => (
        <fieldset key={row.id}>
          <legend>{sets[at]?.name || `Bolt set ${at + 2}`}</legend>
          <BoltSetFields name={`boltSets.${at}`} of={` of set ${at + 2}`} choices={choices} />
          <button type="button" className="link small" onClick={() => rows.remove(at)}>
            Take bolt set {sets[at]?.name || at + 2} away
          </button>
        </fieldset>
      ))}
      {rows.fields.length < MOST_BOLT_SETS && (
        <button type="button" className="quiet" onClick={() => rows.append(EMPTY_BOLT_SET)}>
          Add a bolt set
        </button>
      )}
    </Fold>
  );
}
