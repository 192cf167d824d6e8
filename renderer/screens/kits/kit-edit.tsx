import { FormProvider, useForm, useFormContext, useWatch } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { KitRow } from '../../../core/contract/custody.ts';
import { useAsk, useAskAll, useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { span } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { LongText, Text } from '../../components/fields.tsx';
import { JointPicker } from '../../components/joint-picker.tsx';
import { ScanField } from '../../components/scan-field.tsx';
import { ToolPicker } from '../../components/tool-picker.tsx';
import { RoomIndex } from '../tools/room-index.tsx';
import { emptyKit, type KitForm, kitForm, kitInput, type Named, overlapping } from './kit-form-values.ts';

export function NewKit() {
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      <Title name="New kit" />
      <KitEditor kit={null} />
    </Desk>
  );
}

export function EditKit({ id }: { readonly id: string }) {
  const kit = useAsk('kit.get', { id });
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      <Asked asking={kit} what="the kit">
        {(row) => (
          <>
            <Title
              name={`Edit ${row.data.name}`}
              under="Saving makes a new version; the old one stays in the history."
            />
            <KitEditor kit={row} />
          </>
        )}
      </Asked>
    </Desk>
  );
}

function KitEditor({ kit }: { readonly kit: KitRow | null }) {
  const { today } = useRegister();
  const stored = kit === null ? emptyKit(today) : kitForm(kit);
  const draftName = kit === null ? 'kit' : `kit.${kit.id}.${kit.version}`;
  const form = useForm<KitForm>({ defaultValues: draftOf(draftName, stored) });
  const draft = useDraft(draftName, form);
  const save = useWrite('kit.save');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    save.mutate(
      { id: kit?.id ?? null, version: kit?.version ?? null, data: kitInput(values) },
      {
        onSuccess: (written) => {
          draft.drop();
          goTo(`/kits/${written.id}`);
        },
      },
    ),
  );
  // The scan field is a form of its own; it stands beside the form that saves, not in it.
  return (
    <FormProvider {...form}>
      <Faults value={save.error?.error.details ?? []}>
        <div className="form">
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(stored);
              draft.drop();
            }}
          />
          <fieldset>
            <legend>The job</legend>
            <div className="fields">
              <Text name="name" label="Name of the kit" />
              <Text name="reference" label="Job or order" />
              <Text name="from" label="Needed from" type="date" />
              <Text name="to" label="Needed to" type="date" />
            </div>
          </fieldset>
          <KitToolFields kitId={kit?.id ?? null} />
          <KitJointFields />
          <LongText name="remarks" label="Remarks" />
          {save.error && <Failure error={save.error.error} what="The kit was not saved." />}
          <div className="row">
            <button type="button" className="act" disabled={save.isPending} onClick={onSubmit}>
              Save kit
            </button>
            <Link className="quiet" href={kit === null ? '/kits' : `/kits/${kit.id}`}>
              Leave without saving
            </Link>
          </div>
        </div>
      </Faults>
    </FormProvider>
  );
}

function KitToolFields({ kitId }: { readonly kitId: string | null }) {
  const { setValue, control } = useFormContext<KitForm>();
  const [tools, from, to] = useWatch({ control, name: ['tools', 'from', 'to'] });
  const kits = useAskAll('kit.list', { closed: false, page: 1, pageSize: 200 });
  const put = (next: Named[]) => setValue('tools', next, { shouldDirty: true });
  const add = (id: string, name: string) => {
    if (tools.some((tool) => tool.id === id)) return `${name} is in the kit already.`;
    put([...tools, { id, name }]);
    return `${name} is in the kit.`;
  };
  const clashes = (toolId: string) =>
    overlapping(kits.data ?? [], kitId, toolId, from, to).map(
      ({ data }) => `also in ${data.name}, ${span(data.from, data.to)}`,
    );
  return (
    <fieldset>
      <legend>Tools</legend>
      <div className="take">
        <ScanField label="Scan or type a tool" act="Add" onFound={({ id, number }) => add(id, number)} />
        <ToolPicker
          label="Or find it by number, serial or place"
          toolClass={null}
          chosen={null}
          without={tools.map(({ id }) => id)}
          onChoose={(id, number) => id !== null && add(id, number)}
        />
      </div>
      <Chosen
        items={tools}
        empty="No tool is in the kit."
        said={({ id }) => clashes(id)}
        onRemove={(id) => put(tools.filter((tool) => tool.id !== id))}
      />
    </fieldset>
  );
}

function KitJointFields() {
  const { setValue, control } = useFormContext<KitForm>();
  const joints = useWatch({ control, name: 'joints' });
  const put = (next: Named[]) => setValue('joints', next, { shouldDirty: true });
  return (
    <fieldset>
      <legend>Joints of the job</legend>
      <div className="fields">
        <JointPicker
          label="Add a joint"
          without={joints.map(({ id }) => id)}
          onChoose={(id, name) => put([...joints, { id, name }])}
        />
      </div>
      <Chosen
        items={joints}
        empty="No joint is named."
        said={() => []}
        onRemove={(id) => put(joints.filter((joint) => joint.id !== id))}
      />
    </fieldset>
  );
}

interface ChosenProps {
  readonly items: readonly Named[];
  readonly empty: string;
  readonly said: (item: Named) => readonly string[];
  readonly onRemove: (id: string) => void;
}

function Chosen({ items, empty, said, onRemove }: ChosenProps) {
  if (items.length === 0) return <p className="small chosen">{empty}</p>;
  return (
    <ul className="plain-list chosen">
      {items.map((item) => (
        <li key={item.id}>
          <b>{item.name}</b>
          <span className="flag">{said(item).join('; ')}</span>
          <button type="button" className="link small" onClick={() => onRemove(item.id)}>
            Take out<span className="unseen"> {item.name}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
