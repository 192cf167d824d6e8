import { useFieldArray, useFormContext, useWatch } from 'react-hook-form';
import { jointType, valveSide } from '../../../core/contract/identity.ts';
import { RECORD_FIELDS } from '../../../core/record/field-names.ts';
import { FIELDS } from '../../../core/record/fields.ts';
import { useAsk } from '../../app/ask.ts';
import { Check, Choice, type Option, Quantity, same, Text } from '../../components/fields.tsx';
import { Fold } from '../../components/fold.tsx';
import type { JointForm } from './joint-form-values.ts';

/** What tells this joint from the ones beside it. A joint not saved yet has no pictures to choose from. */
export function IdentityFields({ jointId }: { readonly jointId: string | null }) {
  return (
    <>
      <Fold
        title="Where it is and what it belongs to"
        under={['identity.']}
        except={['identity.confusableWith', 'identity.noneConfusable', 'identity.notApplicable']}
      >
        <div className="fields">
          <Text name="identity.landmark" label="Landmark" hint="A fixed thing nearby, as pump P-101" />
          <Text name="identity.direction" label="Direction from it" hint="As north, above the pump" />
          <Quantity name="identity.distance" label="Distance from it" quantity="length" />
          <Text name="identity.grid" label="Grid or elevation" hint="As the drawing gives it" />
          <Text name="identity.valve" label="Valve it lies at" hint="The valve’s tag" />
          <Choice
            name="identity.valveSide"
            label="Side of the valve"
            options={same(valveSide.options)}
            blank="Not known"
            hint="By the direction of normal flow"
          />
          <Text
            name="identity.neighbours"
            label="Neighbours"
            hint="Tags on both sides, parted by a semicolon; “none” where there is none"
            whole
          />
          <Choice
            name="identity.type"
            label="Type of joint"
            options={same(jointType.options)}
            blank="Not known"
          />
          <Text name="identity.numberingMark" label="Where bolt 1 is marked" />
          <Text name="identity.system" label="System" />
          <Text name="identity.line" label="Line or equipment" hint="Its number" />
          <Text name="identity.drawing" label="Drawing" />
          <Text name="identity.revision" label="Revision of the drawing" />
          <Text name="identity.testPack" label="Test pack" hint="Joints tested together" />
          <Text name="identity.isolationBoundary" label="Isolation boundary" />
          <Photo jointId={jointId} />
        </div>
      </Fold>
      <Confusables />
      <PutAside />
    </>
  );
}

function Photo({ jointId }: { readonly jointId: string | null }) {
  const files = useAsk(
    'attachment.list',
    { kind: 'joint', id: jointId ?? '' },
    { enabled: jointId !== null },
  );
  const pictures = (files.data?.rows ?? []).filter(({ mediaType }) => mediaType.startsWith('image/'));
  const options: Option[] = pictures.map(({ hash, name, remarks }) => ({
    value: hash,
    words: remarks === '' ? name : `${name}: ${remarks}`,
  }));
  // The choice is drawn once the pictures are there: an option that is not offered would be lost on saving.
  if (jointId !== null && files.data === undefined) return null;
  return (
    <Choice
      name="identity.photo"
      label="Photo"
      options={options}
      blank="None"
      hint="One of the pictures under Files on the joint’s page"
    />
  );
}

/** What a joint itself answers for, and could have no answer to. */
const COULD_BE_PUT_ASIDE = RECORD_FIELDS.filter(
  (name) => !FIELDS[name].always && FIELDS[name].place.startsWith('joint:'),
);

function PutAside() {
  const { control } = useFormContext<JointForm>();
  const rows = useFieldArray({ control, name: 'identity.notApplicable' });
  const chosen = useWatch({ control, name: 'identity.notApplicable' });
  return (
    <Fold title="Fields that don’t apply to this joint" under={['identity.notApplicable']}>
      <p className="small lead-in">
        A field put aside with its reason counts as answered in the record: side of valve, where there is no
        valve.
      </p>
      {rows.fields.map((row, at) => (
        <div className="fields" key={row.id}>
          <Choice
            name={`identity.notApplicable.${at}.field`}
            label={`Field ${at + 1}`}
            options={same(COULD_BE_PUT_ASIDE)}
          />
          <Text name={`identity.notApplicable.${at}.reason`} label={`Why field ${at + 1} doesn’t apply`} />
          <button type="button" className="link small" onClick={() => rows.remove(at)}>
            Ask for {chosen[at]?.field} again
          </button>
        </div>
      ))}
      {rows.fields.length < COULD_BE_PUT_ASIDE.length && (
        <button
          type="button"
          className="quiet"
          onClick={() => rows.append({ field: 'side of valve', reason: '' })}
        >
          Put a field aside
        </button>
      )}
    </Fold>
  );
}

const MOST_CONFUSABLES = 20;

function Confusables() {
  const { control } = useFormContext<JointForm>();
  const rows = useFieldArray({ control, name: 'identity.confusableWith' });
  const tags = useWatch({ control, name: 'identity.confusableWith' });
  return (
    <Fold title="Joints it could be taken for" under={['identity.confusableWith', 'identity.noneConfusable']}>
      <p className="small lead-in">
        Opening the wrong joint is among the worst that can happen near this work. Name each joint it has been
        or could be taken for, and what tells them apart at the joint.
      </p>
      {rows.fields.map((row, at) => (
        <div className="fields" key={row.id}>
          <Text name={`identity.confusableWith.${at}.tag`} label={`Tag of look-alike ${at + 1}`} />
          <Text
            name={`identity.confusableWith.${at}.tell`}
            label={`How to tell it from look-alike ${at + 1}`}
            hint="As blue handwheel on this one"
          />
          <button type="button" className="link small" onClick={() => rows.remove(at)}>
            Take {tags[at]?.tag || `look-alike ${at + 1}`} away
          </button>
        </div>
      ))}
      {rows.fields.length < MOST_CONFUSABLES && (
        <button type="button" className="quiet" onClick={() => rows.append({ tag: '', tell: '' })}>
          Add a look-alike
        </button>
      )}
      {rows.fields.length === 0 && (
        <Check name="identity.noneConfusable" label="Somebody looked at the joint: there is none" />
      )}
    </Fold>
  );
}
