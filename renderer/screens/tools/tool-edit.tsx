import { FormProvider, useForm } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { ToolDetail } from '../../../core/contract/tool.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Choice, LongText, same, Text } from '../../components/fields.tsx';
import { TOOL_CLASSES } from '../../components/tool-classes.ts';
import { layOnDesk } from '../custody/desk-state.ts';
import { ClassFields, OwnerFields } from './class-fields.tsx';
import { EMPTY_TOOL, type ToolForm, toolForm, toolInput } from './tool-form-values.ts';
import { ToolIndex } from './tool-index.tsx';

const STATUSES = ['available', 'issued', 'at the laboratory', 'quarantined', 'scrapped'];

export function NewTool() {
  return (
    <Desk indexLabel="Tools" index={<ToolIndex />}>
      <Title name="New tool" />
      <ToolEditor tool={null} />
    </Desk>
  );
}

export function EditTool({ id }: { readonly id: string }) {
  const tool = useAsk('tool.get', { id });
  return (
    <Desk indexLabel="Tools" index={<ToolIndex current={id} />}>
      <Asked asking={tool} what="the tool">
        {(detail) => (
          <>
            <Title
              name={`Edit ${detail.data.number}`}
              under="Saving makes a new version; the old one stays in the history."
            />
            <ToolEditor tool={detail} />
          </>
        )}
      </Asked>
    </Desk>
  );
}

/** A tool's status is the outcome of its moves: it is read here and changed at the desk. */
function StatusText({ tool }: { readonly tool: ToolDetail }) {
  const [, goTo] = useLocation();
  return (
    <div className="field">
      <span className="label">Status</span>
      <span>{tool.data.status}</span>
      <span className="hint">
        <button
          type="button"
          className="link small"
          onClick={() => {
            layOnDesk([{ id: tool.id, number: tool.data.number }]);
            goTo('/custody');
          }}
        >
          Change it at the custody desk
        </button>
      </span>
    </div>
  );
}

function ToolEditor({ tool }: { readonly tool: ToolDetail | null }) {
  const stored = tool === null ? EMPTY_TOOL : toolForm(tool.data);
  const draftName = tool === null ? 'tool' : `tool.${tool.id}.${tool.version}`;
  const form = useForm<ToolForm>({ defaultValues: draftOf(draftName, stored) });
  const draft = useDraft(draftName, form);
  const save = useWrite('tool.save');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    save.mutate(
      { id: tool?.id ?? null, version: tool?.version ?? null, data: toolInput(values) },
      {
        onSuccess: (written) => {
          draft.drop();
          goTo(`/tools/${written.id}`);
        },
      },
    ),
  );
  return (
    <FormProvider {...form}>
      <Faults value={save.error?.error.details ?? []}>
        <form className="form" onSubmit={onSubmit} noValidate>
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(stored);
              draft.drop();
            }}
          />
          <fieldset>
            <legend>Identity</legend>
            <div className="fields">
              <Text name="number" label="Tool number" hint="As on the tool's label" />
              <Text name="serial" label="Serial number" />
              {tool === null ? (
                <Choice name="status" label="Status" options={same(STATUSES)} />
              ) : (
                <StatusText tool={tool} />
              )}
              <Text name="place" label="Place" />
              <OwnerFields />
            </div>
          </fieldset>
          <fieldset>
            <legend>What it is and may stand</legend>
            <div className="fields">
              <Choice name="properties.class" label="Class of tool" options={same(TOOL_CLASSES)} />
              <ClassFields />
            </div>
          </fieldset>
          <LongText name="remarks" label="Remarks" />
          {save.error && <Failure error={save.error.error} what="The tool was not saved." />}
          <div className="row">
            <button type="submit" className="act" disabled={save.isPending}>
              Save tool
            </button>
            <Link className="quiet" href={tool === null ? '/tools' : `/tools/${tool.id}`}>
              Leave without saving
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}
