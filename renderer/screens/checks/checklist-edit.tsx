import { FormProvider, useFieldArray, useForm, useFormContext, useWatch } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import { type ChecklistRow, checkKind } from '../../../core/contract/check.ts';
import { unitsOf } from '../../../core/units/units.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { unitLabel } from '../../app/text/number.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults, useFault } from '../../components/faults.ts';
import { Check, Choice, same, Text } from '../../components/fields.tsx';
import { TOOL_CLASSES } from '../../components/tool-classes.ts';
import { RoomIndex } from '../tools/room-index.tsx';
import {
  blankQuestion,
  type ChecklistForm,
  checklistForm,
  checklistInput,
  emptyChecklist,
} from './checklist-form-values.ts';

export function NewChecklist() {
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      <Title
        name="New checklist"
        under="Taken from the tools’ own instructions or the site’s procedure, which it names."
      />
      <ChecklistEditor list={null} />
    </Desk>
  );
}

export function EditChecklist({ id }: { readonly id: string }) {
  const lists = useAsk('checklist.list', {});
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      <Asked asking={lists} what="the checklist">
        {({ rows }) => {
          const list = rows.find((row) => row.id === id);
          return list === undefined ? (
            <Title name="There is no such checklist" />
          ) : (
            <>
              <Title
                name={`Edit ${list.data.name}`}
                under={`Saving makes version ${list.version + 1}. Checks on record keep the version they followed.`}
              />
              <ChecklistEditor list={list} />
            </>
          );
        }}
      </Asked>
    </Desk>
  );
}

function ChecklistEditor({ list }: { readonly list: ChecklistRow | null }) {
  const stored = list === null ? emptyChecklist() : checklistForm(list.data);
  const draftName = list === null ? 'checklist' : `checklist.${list.id}.${list.version}`;
  const form = useForm<ChecklistForm>({ defaultValues: draftOf(draftName, stored) });
  const draft = useDraft(draftName, form);
  const save = useWrite('checklist.save');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    save.mutate(
      { id: list?.id ?? null, version: list?.version ?? null, data: checklistInput(values) },
      {
        onSuccess: ({ id }) => {
          draft.drop();
          goTo(`/checklists/${id}`);
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
            <legend>Checklist</legend>
            <div className="fields">
              <Text name="name" label="Name" />
              {list === null ? (
                <Choice name="kind" label="Kind" blank="Choose the kind" options={same(checkKind.options)} />
              ) : (
                <div className="field">
                  <span className="label">Kind</span>
                  <span>{list.data.kind}</span>
                  <span className="hint">Stays, as checks on record followed this list</span>
                </div>
              )}
              <Text
                name="source"
                label="Source"
                hint="Title, edition and page of the tool’s own instructions, or the site’s procedure"
                whole
              />
            </div>
          </fieldset>
          <Classes />
          <Questions />
          <fieldset>
            <legend>When it is asked for</legend>
            <div className="fields">
              <Text
                name="everyDays"
                label="Every so many days"
                inputMode="numeric"
                hint="Empty: not counted by days"
              />
              <Text
                name="everyUses"
                label="Every so many uses"
                inputMode="numeric"
                hint="Empty: not counted by uses; whichever comes first"
              />
              <Choice
                name="overdue"
                label="A setting with an overdue tool"
                options={[
                  { value: 'warn', words: 'is warned of' },
                  { value: 'refuse', words: 'is refused' },
                ]}
              />
            </div>
          </fieldset>
          {list !== null && <Check name="retired" label="Retired: not offered and not asked for any more" />}
          {save.error && <Failure error={save.error.error} what="The checklist was not saved." />}
          <div className="row">
            <button type="submit" className="act" disabled={save.isPending}>
              Save checklist
            </button>
            <Link className="quiet" href={list === null ? '/checklists' : `/checklists/${list.id}`}>
              Leave without saving
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}

function Classes() {
  const { register } = useFormContext<ChecklistForm>();
  const fault = useFault('classes');
  return (
    <fieldset data-field="classes">
      <legend>For tools of the class</legend>
      <div className="checks">
        {TOOL_CLASSES.map((each) => (
          <label key={each} className="check">
            <input type="checkbox" value={each} {...register('classes')} />
            {each}
          </label>
        ))}
      </div>
      {fault && <p className="fault-line">{fault.allowed}</p>}
    </fieldset>
  );
}

const MOST_QUESTIONS = 40;

function Questions() {
  const { control } = useFormContext<ChecklistForm>();
  const { fields, append, remove, move } = useFieldArray({ control, name: 'questions' });
  return (
    <fieldset>
      <legend>Questions, in the order they are looked at</legend>
      <ol className="question-fields">
        {fields.map((field, at) => (
          <li key={field.id}>
            <QuestionFields at={at} />
            <div className="row">
              <button
                type="button"
                className="link small"
                disabled={at === 0}
                onClick={() => move(at, at - 1)}
              >
                Move up<span className="unseen"> question {at + 1}</span>
              </button>
              {fields.length > 1 && (
                <button type="button" className="link small" onClick={() => remove(at)}>
                  Remove<span className="unseen"> question {at + 1}</span>
                </button>
              )}
            </div>
          </li>
        ))}
      </ol>
      {fields.length < MOST_QUESTIONS && (
        <button type="button" className="quiet" onClick={() => append(blankQuestion())}>
          Add a question
        </button>
      )}
    </fieldset>
  );
}

function QuestionFields({ at }: { readonly at: number }) {
  const answer: ChecklistForm['questions'][number]['answer'] = useWatch({ name: `questions.${at}.answer` });
  const number = at + 1;
  const measured = answer !== 'yes or no';
  return (
    <div className="question-line">
      <Text name={`questions.${at}.text`} label={`Question ${number}`} />
      <Choice
        name={`questions.${at}.answer`}
        label={`Answer to question ${number}`}
        options={same(['yes or no', 'pressure', 'torque', 'number'])}
      />
      {measured && (
        <>
          <Text
            name={`questions.${at}.least`}
            label={`Least, question ${number}`}
            inputMode="decimal"
            hint="Empty: no end"
          />
          <Text
            name={`questions.${at}.most`}
            label={`Most, question ${number}`}
            inputMode="decimal"
            hint="Empty: no end"
          />
        </>
      )}
      {(answer === 'pressure' || answer === 'torque') && (
        <Choice
          name={`questions.${at}.unit`}
          label={`Unit of question ${number}`}
          options={unitsOf(answer).map((unit) => ({ value: unit, words: unitLabel(unit) }))}
        />
      )}
    </div>
  );
}
