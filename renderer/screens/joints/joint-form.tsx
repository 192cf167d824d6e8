import { useFormContext, useWatch } from 'react-hook-form';
import { Link } from 'wouter';
import type { ReferenceChoices } from '../../../core/contract/register.ts';
import { useAsk } from '../../app/ask.ts';
import { Choice, LongText, Quantity, same, Text } from '../../components/fields.tsx';

interface SectionProps {
  readonly choices: ReferenceChoices;
}

/** Every field of a joint, in the order of the joint page. */
export function JointFields({ choices }: SectionProps) {
  return (
    <>
      <Identity />
      <Flange choices={choices} />
      <Bolting choices={choices} />
      <GasketAndLubricant />
      <Target />
      <Limits />
      <fieldset>
        <legend>Remarks</legend>
        <div className="fields">
          <LongText name="remarks" label="Remarks" whole />
        </div>
      </fieldset>
    </>
  );
}

function Identity() {
  const units = useAsk('unit.list', {});
  const options = (units.data?.rows ?? []).map((unit) => ({ value: unit.id, words: unit.name }));
  return (
    <fieldset>
      <legend>Identity</legend>
      <div className="fields">
        <Text name="tag" label="Tag" />
        <div>
          <Choice name="unitId" label="Plant unit" options={options} blank="Choose a plant unit" />
          {units.data?.rows.length === 0 && (
            <Link className="small" href="/units">
              Name the first plant unit
            </Link>
          )}
        </div>
        <Text name="service" label="Service" hint="What flows through it" />
        <Quantity name="serviceTemperature" label="Service temperature" quantity="temperature" />
        <Text name="location" label="Location" hint="Landmark, elevation, side of valve" whole />
      </div>
    </fieldset>
  );
}

function Flange({ choices }: SectionProps) {
  const { setValue } = useFormContext();
  const [kind, standard, size] = useWatch({ name: ['flange.kind', 'flange.standard', 'flange.size'] });
  const sizes = choices.flangeStandards.find((each) => each.standard === standard)?.sizes ?? [];
  const ratings = sizes.find((each) => each.size === size)?.ratings ?? [];
  return (
    <fieldset>
      <legend>Flange</legend>
      <div className="fields">
        <Choice
          name="flange.kind"
          label="Kind of flange"
          options={[
            { value: 'standard', words: 'of a standard' },
            { value: 'custom', words: 'bolt circle of its own' },
          ]}
        />
        {kind === 'custom' ? (
          <Text name="flange.description" label="Description" />
        ) : (
          <>
            <Choice
              name="flange.standard"
              label="Flange standard"
              options={same(choices.flangeStandards.map((each) => each.standard))}
            />
            <Choice
              name="flange.size"
              label={standard === 'EN 1092-1' ? 'Size, DN' : 'Size, NPS'}
              options={same(sizes.map((each) => each.size))}
              blank="Choose a size"
            />
            <Choice
              name="flange.rating"
              label={standard === 'EN 1092-1' ? 'PN' : 'Class'}
              options={same(ratings)}
              blank={size ? 'Choose' : 'Choose a size first'}
            />
            <Choice
              name="flange.facing"
              label="Facing"
              options={same(['raised face', 'flat face', 'ring joint', 'other'])}
            />
          </>
        )}
        {kind === 'standard' && size && !sizes.some((each) => each.size === size) && (
          <p className="whole fault-line">
            The size {size} is not in {standard}.{' '}
            <button type="button" className="link" onClick={() => setValue('flange.size', '')}>
              Choose another
            </button>
          </p>
        )}
      </div>
    </fieldset>
  );
}

function Bolting({ choices }: SectionProps) {
  return (
    <fieldset>
      <legend>Bolting</legend>
      <p className="small lead-in">
        Studs, thread and bolt circle left empty are taken from the flange standard where it has them.
      </p>
      <div className="fields">
        <Text name="bolting.count" label="Number of studs" inputMode="numeric" />
        <Text name="bolting.thread" label="Thread" offers={choices.threads} hint="As 7/8-9 UNC or M24x3" />
        <Quantity name="bolting.circle" label="Bolt circle" quantity="length" />
        <Text
          name="bolting.grade"
          label="Stud grade"
          offers={choices.grades}
          hint="Specification and grade, as ASTM A193 B7"
        />
        <Quantity
          name="bolting.yieldStrength"
          label="Yield strength"
          quantity="stress"
          hint="Only where the grade has no table row"
        />
        <Text name="bolting.yieldOrigin" label="Where the yield strength is from" />
        <Quantity name="bolting.studLength" label="Stud length" quantity="length" />
        <Quantity name="bolting.grip" label="Grip length" quantity="length" hint="Between the two nuts" />
        <Choice
          name="bolting.nutSeries"
          label="Nut series"
          options={same(choices.nutSeries)}
          blank="As the flange standard says"
        />
        <Quantity
          name="radialGap"
          label="Gap to hub or pipe"
          quantity="length"
          hint="Free distance from the stud's centre"
        />
      </div>
    </fieldset>
  );
}

function GasketAndLubricant() {
  return (
    <>
      <fieldset>
        <legend>Gasket</legend>
        <div className="fields">
          <Text name="gasket.type" label="Gasket type" hint="Leave empty when not known" />
          <Quantity name="gasket.thickness" label="Gasket thickness" quantity="length" />
        </div>
      </fieldset>
      <fieldset>
        <legend>Lubricant and friction</legend>
        <p className="small lead-in">
          Friction decides more of the bolt load than the wrench does. Give the nut factor K, or both friction
          coefficients.
        </p>
        <div className="fields">
          <Text name="lubricant.name" label="Lubricant" hint="Product class, as nickel-based anti-seize" />
          <Text name="lubricant.batch" label="Lubricant batch" />
          <Quantity name="lubricant.nutFactor" label="Nut factor K" quantity="ratio" />
          <Quantity
            name="lubricant.nutFactorCv"
            label="Scatter of K"
            quantity="ratio"
            hint="Coefficient of variation from bolt to bolt"
          />
          <Quantity name="lubricant.frictionThread" label="Friction in the thread" quantity="ratio" />
          <Quantity name="lubricant.frictionBearing" label="Friction under the nut" quantity="ratio" />
          <Choice
            name="lubricant.evidence"
            label="Evidence for friction"
            options={same(['published', 'measured', 'assumed'])}
          />
          <Text name="lubricant.source" label="Source of friction" />
        </div>
      </fieldset>
    </>
  );
}

const TARGET_MODES = ['percent of yield', 'bolt stress', 'bolt load', 'torque'];
const AREAS = [
  { value: 'tensile', words: 'tensile stress area' },
  { value: 'root', words: 'root area' },
];

function Target() {
  const mode = useWatch({ name: 'target.mode' });
  return (
    <fieldset>
      <legend>Target</legend>
      <div className="fields">
        <Choice
          name="target.mode"
          label="Target given as"
          options={same(TARGET_MODES)}
          blank="Not known yet"
        />
        {mode === 'percent of yield' && (
          <Quantity name="target.percent" label="Share of yield" quantity="ratio" />
        )}
        {mode === 'bolt stress' && (
          <Quantity name="target.stress" label="Target bolt stress" quantity="stress" />
        )}
        {mode === 'bolt load' && <Quantity name="target.load" label="Target bolt load" quantity="force" />}
        {mode === 'torque' && <Quantity name="target.torque" label="Target torque" quantity="torque" />}
        {(mode === 'percent of yield' || mode === 'bolt stress') && (
          <Choice name="target.area" label="Area of the target stress" options={AREAS} />
        )}
        {mode !== '' && (
          <Text
            name="target.basis"
            label="Basis of the target"
            hint="The approved procedure or calculation"
          />
        )}
      </div>
    </fieldset>
  );
}

function Limits() {
  return (
    <fieldset>
      <legend>Limits</legend>
      <div className="fields">
        <Quantity name="limits.boltStressMax" label="Highest bolt stress" quantity="stress" />
        <Quantity name="limits.boltStressMin" label="Lowest bolt stress" quantity="stress" />
        <Choice name="limits.boltStressArea" label="Area of the bolt limits" options={AREAS} />
        <Quantity
          name="limits.flangeBoltStressMax"
          label="Highest bolt stress for the flange"
          quantity="stress"
        />
        <Text name="limits.source" label="Source of the limits" whole />
      </div>
    </fieldset>
  );
}
