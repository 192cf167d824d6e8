import { useWatch } from 'react-hook-form';
import type { ReferenceChoices } from '../../../core/contract/register.ts';
import { useAsk } from '../../app/ask.ts';
import { Choice, Quantity, same, Text } from '../../components/fields.tsx';
import { NameField } from '../../components/name-field.tsx';

/** Fields that stand once for the joint and again for each further bolt set. */
export interface Under {
  /** Path before the fields' names: "" or "boltSets.0.". */
  readonly under?: string;
  /** Tells the labels of several sets apart: " of set 2". */
  readonly of?: string;
}

interface BoltingFieldsProps extends Under {
  readonly choices: ReferenceChoices;
  /** Where the free distances stand in the form. */
  readonly space: string;
}

export function BoltingFields({ under = '', of = '', space, choices }: BoltingFieldsProps) {
  return (
    <>
      <Text name={`${under}bolting.count`} label={`Number of studs${of}`} inputMode="numeric" />
      <Text
        name={`${under}bolting.thread`}
        label={`Thread${of}`}
        offers={choices.threads}
        hint="As 7/8-9 UNC or M24x3"
      />
      <Quantity name={`${under}bolting.circle`} label={`Bolt circle${of}`} quantity="length" />
      <Text
        name={`${under}bolting.grade`}
        label={`Stud grade${of}`}
        offers={choices.grades}
        hint="Specification and grade, as ASTM A193 B7"
      />
      <Quantity
        name={`${under}bolting.yieldStrength`}
        label={`Yield strength${of}`}
        quantity="stress"
        hint="Only where the grade has no table row"
      />
      <Text name={`${under}bolting.yieldOrigin`} label={`Where the yield strength is from${of}`} />
      <Quantity name={`${under}bolting.studLength`} label={`Stud length${of}`} quantity="length" />
      <Quantity
        name={`${under}bolting.grip`}
        label={`Grip length${of}`}
        quantity="length"
        hint="Between the two nuts"
      />
      <Choice
        name={`${under}bolting.nutSeries`}
        label={`Nut series${of}`}
        options={same(choices.nutSeries)}
        blank="As the flange standard says"
      />
      <Choice
        name={`${under}bolting.pressureRetaining`}
        label={`Hold the pressure in${of}`}
        options={same(['yes', 'no'])}
        blank="Not known"
        hint="Bolts of an actuator or a guard do not"
      />
      <Quantity
        name={`${space}radialGap`}
        label={`Gap to hub or pipe${of}`}
        quantity="length"
        hint="Free distance from the stud's centre"
      />
      <Quantity
        name={`${space}axialGap`}
        label={`Free distance along the stud${of}`}
        quantity="length"
        hint="From the flange outwards, where the tool is put on"
      />
    </>
  );
}

/** What the check against stripping takes, and why bolting differs from the standard. */
export function StrengthFields({ under = '', of = '' }: Under) {
  return (
    <>
      <Quantity
        name={`${under}bolting.tensileStrength`}
        label={`Tensile strength of the stud${of}`}
        quantity="stress"
        hint="Only where the grade has no table row"
      />
      <Text name={`${under}bolting.nutGrade`} label={`Nut grade${of}`} />
      <Quantity
        name={`${under}bolting.nutTensileStrength`}
        label={`Tensile strength of the nut${of}`}
        quantity="stress"
      />
      <Text name={`${under}bolting.reason`} label={`Why bolting differs from the standard${of}`} whole />
    </>
  );
}

export function LubricantFields({ under = '', of = '' }: Under) {
  const classes = useAsk('reference.choices', {}).data?.frictionClasses ?? [];
  return (
    <>
      <NameField
        name={`${under}lubricant.name`}
        label={`Lubricant${of}`}
        offers={classes.map(({ name, range, lubricants, source }) => ({
          id: name,
          name,
          detail: `${range}, a range and no value to set by · ${lubricants.join('; ')} · ${source}`,
        }))}
        hint="Product class, as nickel-based anti-seize, or a friction class"
      />
      <Text name={`${under}lubricant.batch`} label={`Lubricant batch${of}`} />
      <Quantity name={`${under}lubricant.nutFactor`} label={`Nut factor K${of}`} quantity="ratio" />
      <Quantity
        name={`${under}lubricant.nutFactorCv`}
        label={`Scatter of K${of}`}
        quantity="ratio"
        hint="Coefficient of variation from bolt to bolt"
      />
      <Quantity
        name={`${under}lubricant.nutFactorBatchCv`}
        label={`Scatter of K between batches${of}`}
        quantity="ratio"
        hint="The same for every bolt of the joint"
      />
      <Quantity
        name={`${under}lubricant.frictionThread`}
        label={`Friction in the thread${of}`}
        quantity="ratio"
      />
      <Quantity
        name={`${under}lubricant.frictionBearing`}
        label={`Friction under the nut${of}`}
        quantity="ratio"
      />
      <Choice
        name={`${under}lubricant.evidence`}
        label={`Evidence for friction${of}`}
        options={same(['published', 'measured', 'assumed'])}
      />
      <Text name={`${under}lubricant.source`} label={`Source of friction${of}`} />
    </>
  );
}

const TARGET_MODES = [
  { value: 'percent of yield', words: 'share of yield' },
  { value: 'bolt stress', words: 'bolt stress' },
  { value: 'bolt load', words: 'bolt load' },
  { value: 'torque', words: 'torque' },
  { value: 'gasket stress', words: 'gasket stress, from the data sheet' },
  { value: 'component limits', words: 'gasket stress within component limits' },
];

const AREAS = [
  { value: 'tensile', words: 'tensile stress area' },
  { value: 'root', words: 'root area' },
];

export function TargetFields({ under = '', of = '' }: Under) {
  const mode = useWatch({ name: `${under}target.mode` });
  const fromGasket = mode === 'gasket stress' || mode === 'component limits';
  return (
    <>
      <Choice
        name={`${under}target.mode`}
        label={`Target given as${of}`}
        options={TARGET_MODES}
        blank="Not known yet"
        {...(fromGasket ? { hint: 'Takes the gasket’s target stress and contact diameters' } : {})}
      />
      {mode === 'percent of yield' && (
        <Quantity name={`${under}target.percent`} label={`Share of yield${of}`} quantity="ratio" />
      )}
      {mode === 'bolt stress' && (
        <Quantity name={`${under}target.stress`} label={`Target bolt stress${of}`} quantity="stress" />
      )}
      {mode === 'bolt load' && (
        <Quantity name={`${under}target.load`} label={`Target bolt load${of}`} quantity="force" />
      )}
      {mode === 'torque' && (
        <Quantity name={`${under}target.torque`} label={`Target torque${of}`} quantity="torque" />
      )}
      {(mode === 'percent of yield' || mode === 'bolt stress') && (
        <Choice name={`${under}target.area`} label={`Area of the target stress${of}`} options={AREAS} />
      )}
      {mode !== '' && (
        <Text
          name={`${under}target.basis`}
          label={`Basis of the target${of}`}
          hint="The approved procedure or calculation"
        />
      )}
    </>
  );
}

export function LimitFields({ under = '', of = '' }: Under) {
  return (
    <>
      <Quantity name={`${under}limits.boltStressMax`} label={`Highest bolt stress${of}`} quantity="stress" />
      <Quantity name={`${under}limits.boltStressMin`} label={`Lowest bolt stress${of}`} quantity="stress" />
      <Choice name={`${under}limits.boltStressArea`} label={`Area of the bolt limits${of}`} options={AREAS} />
      <Quantity
        name={`${under}limits.flangeBoltStressMax`}
        label={`Highest bolt stress for the flange${of}`}
        quantity="stress"
      />
      <Quantity
        name={`${under}limits.flangeRotationMax`}
        label={`Flange rotation at that stress${of}`}
        quantity="angle"
      />
      <Text name={`${under}limits.source`} label={`Source of the limits${of}`} whole />
    </>
  );
}
