import { useWatch } from 'react-hook-form';
import { useAsk } from '../../app/ask.ts';
import { Choice, Quantity, same, Text } from '../../components/fields.tsx';
import { NameField } from '../../components/name-field.tsx';

interface GasketDataFieldsProps {
  readonly name: string;
  /** Tells the labels of several gaskets apart: " of gasket 2". */
  readonly of?: string;
}

/** What the gasket's data sheet and drawing say; left empty it is not known. */
export function GasketDataFields({ name, of = '' }: GasketDataFieldsProps) {
  const kind = useWatch({ name: `${name}.kind` });
  const codeTypes = useAsk('reference.choices', {}).data?.gasketTypes ?? [];
  return (
    <>
      <p className="small lead-in">
        From the gasket’s data sheet. What is left empty is not known, and nothing is put in its place.
      </p>
      <div className="fields">
        <Choice
          name={`${name}.kind`}
          label={`Kind${of}`}
          options={same(['flat', 'spiral wound', 'ring joint'])}
          blank="Not known yet"
        />
        {kind === 'ring joint' ? (
          <>
            <Quantity name={`${name}.pitchDiameter`} label={`Pitch diameter${of}, P`} quantity="length" />
            <Quantity name={`${name}.ringWidth`} label={`Ring width${of}, A`} quantity="length" />
          </>
        ) : (
          <>
            <Quantity
              name={`${name}.contactInside`}
              label={`Contact, inside diameter${of}`}
              quantity="length"
              hint="Sealing element, not the centring ring"
            />
            <Quantity
              name={`${name}.contactOutside`}
              label={`Contact, outside diameter${of}`}
              quantity="length"
            />
          </>
        )}
        <Quantity name={`${name}.partitionArea`} label={`Partition bars, area${of}`} quantity="area" />
        <Quantity
          name={`${name}.partitionShare`}
          label={`Part of the bars that is counted${of}`}
          quantity="ratio"
        />
        <NameField
          name={`${name}.codeType`}
          label={`Type in the code’s table${of}`}
          offers={codeTypes.map((type) => ({ id: type, name: type, detail: '' }))}
          hint="m and y left empty are taken from there"
        />
        <Quantity name={`${name}.factorM`} label={`Gasket factor m${of}`} quantity="ratio" />
        <Quantity name={`${name}.stressY`} label={`Seating stress y${of}`} quantity="stress" />
        <Quantity name={`${name}.seatingStress`} label={`Least stress when seating${of}`} quantity="stress" />
        <Quantity
          name={`${name}.operatingStress`}
          label={`Least stress in operation${of}`}
          quantity="stress"
        />
        <Quantity name={`${name}.stressMax`} label={`Highest stress${of}`} quantity="stress" />
        <Quantity name={`${name}.targetStress`} label={`Target stress${of}`} quantity="stress" />
        <Quantity
          name={`${name}.retainedOperating`}
          label={`Stress left in operation${of}`}
          quantity="ratio"
          hint="Part of the stress at assembly"
        />
        <Quantity
          name={`${name}.retainedTest`}
          label={`Stress left at the pressure test${of}`}
          quantity="ratio"
        />
        <Quantity name={`${name}.rotationMax`} label={`Flange rotation it stands${of}`} quantity="angle" />
        <Quantity name={`${name}.expansion`} label={`Expansion${of}`} quantity="expansion" />
        <Text name={`${name}.batch`} label={`Batch${of}`} />
        <Text name={`${name}.source`} label={`Source of the gasket data${of}`} whole />
      </div>
    </>
  );
}
