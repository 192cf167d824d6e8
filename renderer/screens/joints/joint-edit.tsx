import { type RefObject, useEffect, useRef } from 'react';
import { FormProvider, useForm } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { ReferenceChoices } from '../../../core/contract/register.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { JointFields } from './joint-form.tsx';
import { EMPTY_JOINT, type JointForm, jointForm, jointInput } from './joint-form-values.ts';
import { JointIndex } from './joint-index.tsx';

export function NewJoint() {
  const choices = useAsk('reference.choices', {});
  return (
    <Desk indexLabel="Joints" index={<JointIndex />}>
      <Title name="New joint" />
      <Asked asking={choices} what="the standards">
        {(loaded) => <JointEditor joint={null} choices={loaded} />}
      </Asked>
    </Desk>
  );
}

interface EditJointProps {
  readonly id: string;
  /** The field a finding leads to. */
  readonly field?: string | undefined;
}

export function EditJoint({ id, field }: EditJointProps) {
  const choices = useAsk('reference.choices', {});
  const joint = useAsk('joint.get', { id });
  return (
    <Desk indexLabel="Joints" index={<JointIndex current={id} />}>
      <Asked asking={joint} what="the joint">
        {(detail) => (
          <>
            <Title
              name={`Edit ${detail.data.tag}`}
              under="Saving makes a new version; the old one stays in the history."
            />
            <Asked asking={choices} what="the standards">
              {(loaded) => <JointEditor joint={detail} choices={loaded} field={field} />}
            </Asked>
          </>
        )}
      </Asked>
    </Desk>
  );
}

interface JointEditorProps {
  readonly joint: JointDetail | null;
  readonly choices: ReferenceChoices;
  readonly field?: string | undefined;
}

function JointEditor({ joint, choices, field }: JointEditorProps) {
  const stored = joint === null ? EMPTY_JOINT : jointForm(joint.data);
  // A draft belongs to the version it was begun on: a later save by someone else must not be overwritten by it.
  const draftName = joint === null ? 'joint' : `joint.${joint.id}.${joint.version}`;
  const form = useForm<JointForm>({ defaultValues: draftOf(draftName, stored) });
  const draft = useDraft(draftName, form);
  const save = useWrite('joint.save');
  const [, goTo] = useLocation();
  const frame = useRef<HTMLFormElement>(null);
  useFieldFocus(frame, field);

  const onSubmit = form.handleSubmit((values) =>
    save.mutate(
      {
        id: joint?.id ?? null,
        version: joint?.version ?? null,
        data: jointInput(values, joint?.data ?? null),
      },
      {
        onSuccess: (written) => {
          draft.drop();
          goTo(`/joints/${written.id}`);
        },
      },
    ),
  );
  return (
    <FormProvider {...form}>
      <Faults value={save.error?.error.details ?? []}>
        <form className="form" onSubmit={onSubmit} ref={frame} noValidate>
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(stored);
              draft.drop();
            }}
          />
          <JointFields choices={choices} jointId={joint?.id ?? null} />
          {save.error && <Failure error={save.error.error} what="The joint was not saved." />}
          <div className="row">
            <button type="submit" className="act" disabled={save.isPending}>
              Save joint
            </button>
            <Link className="quiet" href={joint === null ? '/joints' : `/joints/${joint.id}`}>
              Leave without saving
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}

/** A finding leads to the field that solves it; a group of fields to its first. */
function useFieldFocus(frame: RefObject<HTMLFormElement | null>, field: string | undefined) {
  useEffect(() => {
    const name = field?.replace('space.', '');
    if (!name) return;
    const named = [...(frame.current?.querySelectorAll<HTMLElement>('[name]') ?? [])];
    const wanted = named.find((element) => {
      const own = element.getAttribute('name') ?? '';
      return own === name || own.startsWith(`${name}.`);
    });
    const fold = wanted?.closest('details');
    if (fold) fold.open = true;
    wanted?.scrollIntoView({ block: 'center' });
    wanted?.focus();
  }, [field, frame]);
}
