import { FormProvider, useForm, useWatch } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { ToolClass, ToolDetail } from '../../../core/contract/tool.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Choice, LongText, Quantity, same, Text } from '../../components/fields.tsx';
import { TOOL_CLASSES } from '../../components/tool-classes.ts';
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
              <Choice name="status" label="Status" options={same(STATUSES)} />
              <Text name="place" label="Place" />
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

const ratedTorque = <Quantity name="properties.ratedTorque" label="Rated torque" quantity="torque" />;
const ratedPressure = <Quantity name="properties.ratedPressure" label="Rated pressure" quantity="pressure" />;
const family = <Text name="properties.family" label="Family" hint="Parts of one family fit each other" />;
const headRadius = (
  <Quantity
    name="properties.headRadius"
    label="Head radius"
    quantity="length"
    hint="From the opening's centre to the outside"
  />
);
const opening = (
  <>
    <Quantity
      name="properties.acrossFlats"
      label="Opening, across flats"
      quantity="length"
      hint="As 1-7/16 in"
    />
    <Quantity
      name="properties.looseness"
      label="Opening above nominal"
      quantity="length"
      hint="Leave empty when not known"
    />
  </>
);

function ClassFields() {
  const chosen: ToolClass = useWatch({ name: 'properties.class' });
  switch (chosen) {
    case 'drive unit':
      return (
        <>
          {ratedTorque}
          {ratedPressure}
          {family}
          {headRadius}
        </>
      );
    case 'cassette':
      return (
        <>
          {opening}
          {ratedTorque}
          {family}
          {headRadius}
        </>
      );
    case 'reducer':
      return (
        <>
          <Quantity name="properties.outerAcrossFlats" label="Outer hex, across flats" quantity="length" />
          {opening}
          {ratedTorque}
        </>
      );
    case 'pump':
      return ratedPressure;
    case 'gauge':
      return (
        <>
          <Quantity name="properties.scaleMax" label="End of scale" quantity="pressure" />
          <Quantity name="properties.graduation" label="Marks every" quantity="pressure" />
          <Quantity
            name="properties.accuracy"
            label="Accuracy"
            quantity="ratio"
            hint="Largest error, of the full scale"
          />
        </>
      );
    case 'hose':
      return (
        <>
          {ratedPressure}
          <Text name="properties.madeOn" label="Made on" type="date" />
        </>
      );
  }
}
