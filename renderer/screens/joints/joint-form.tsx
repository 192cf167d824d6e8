import { useFormContext, useWatch } from 'react-hook-form';
import { Link } from 'wouter';
import type { ReferenceChoices } from '../../../core/contract/register.ts';
import { useAsk } from '../../app/ask.ts';
import { Choice, LongText, Quantity, same, Text } from '../../components/fields.tsx';
import { Fold } from '../../components/fold.tsx';
import { TakeSiteRow } from '../site/take-site-row.tsx';
import {
  BoltingFields,
  LimitFields,
  LubricantFields,
  StrengthFields,
  TargetFields,
} from './bolting-fields.tsx';
import { IdentityFields } from './identity-fields.tsx';
import { MoreFields } from './joint-more-fields.tsx';

interface SectionProps {
  readonly choices: ReferenceChoices;
}

interface JointFieldsProps extends SectionProps {
  /** Null for a joint that is not saved yet. */
  readonly jointId: string | null;
}

/** Every field of a joint, in the order of the joint page. */
export function JointFields({ choices, jointId }: JointFieldsProps) {
  return (
    <>
      <Identity jointId={jointId} />
      <Flange choices={choices} />
      <Bolting choices={choices} />
      <GasketAndLubricant />
      <fieldset>
        <legend>Target</legend>
        <div className="fields">
          <TargetFields />
        </div>
      </fieldset>
      <fieldset>
        <legend>Limits</legend>
        <div className="fields">
          <LimitFields />
        </div>
      </fieldset>
      <MoreFields choices={choices} />
      <fieldset>
        <legend>Remarks</legend>
        <div className="fields">
          <LongText name="remarks" label="Remarks" whole />
        </div>
      </fieldset>
    </>
  );
}

function Identity({ jointId }: Pick<JointFieldsProps, 'jointId'>) {
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
        <Text name="location" label="Location" hint="In a few words, as it stands under the tag" whole />
      </div>
      <IdentityFields jointId={jointId} />
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
          <>
            <Text name="flange.description" label="Description" />
            <SiteFlange choices={choices} />
          </>
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

const STRENGTH = [
  'bolting.tensileStrength',
  'bolting.nutGrade',
  'bolting.nutTensileStrength',
  'bolting.reason',
];

function Bolting({ choices }: SectionProps) {
  return (
    <fieldset>
      <legend>Bolting</legend>
      <p className="small lead-in">
        Studs, thread and bolt circle left empty are taken from the flange standard where it has them.
      </p>
      <div className="fields">
        <BoltingFields choices={choices} space="" />
      </div>
      <Fold title="Strength of thread and nut, departures from the standard" under={STRENGTH}>
        <div className="fields">
          <StrengthFields />
        </div>
      </Fold>
    </fieldset>
  );
}

/** Bolting left empty is taken from the site's row; a retired row stays with the joints that name it. */
function SiteFlange({ choices }: SectionProps) {
  const chosen: string = useWatch({ name: 'flange.siteRow' });
  const offered = choices.siteRows.flatMap(({ data }) => (data.kind === 'flange' ? [data.key] : []));
  const options = chosen === '' || offered.includes(chosen) ? offered : [...offered, chosen];
  return (
    <div>
      <Choice
        name="flange.siteRow"
        label="Row of the site’s flange table"
        options={same(options)}
        blank="None"
      />
      <Link className="small" href="/site-tables">
        Site tables
      </Link>
    </div>
  );
}

function GasketAndLubricant() {
  return (
    <>
      <fieldset>
        <legend>Gasket</legend>
        <div className="fields">
          <TakeSiteRow kind="gasket" under="gasket" />
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
          <TakeSiteRow kind="lubricant" under="lubricant" />
          <LubricantFields />
        </div>
      </fieldset>
    </>
  );
}
