import { useState } from 'react';
import { FormProvider, useForm } from 'react-hook-form';
import { Link } from 'wouter';
import type { ChecklistRow } from '../../../core/contract/check.ts';
import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { nowLocal } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { LongText, Text } from '../../components/fields.tsx';
import { ChosenPerson } from '../cases/chosen-person.tsx';
import { ToolIndex } from '../tools/tool-index.tsx';
import { CheckAnswers } from './check-answers.tsx';
import { useCheckAssessment } from './check-assessment.ts';
import { CheckCautions } from './check-cautions.tsx';
import { CheckComparisons } from './check-comparisons.tsx';
import { CheckDone, type Recorded } from './check-done.tsx';
import {
  type CheckForm,
  checkDraft,
  checkFaults,
  checkInput,
  chosenKind,
  emptyCheck,
  holdsPressure,
  listsFor,
} from './check-form-values.ts';
import { CheckLeak } from './check-leak.tsx';
import { CheckMargin } from './check-margin.tsx';
import { CheckResult } from './check-result.tsx';
import { CheckSubject } from './check-subject.tsx';

/** What is looked at on a tool between calibrations, by the site's list for its class or without one. */
export function RecordCheck({ id }: { readonly id: string }) {
  const record = useAsk('tool.record', { id });
  const lists = useAsk('checklist.list', {});
  const [recorded, setRecorded] = useState<Recorded | null>(null);
  return (
    <Desk
      indexLabel="Tools"
      index={<ToolIndex current={id} />}
      margin={record.data && <CheckMargin tool={record.data} />}
    >
      <Asked asking={record} what="the tool">
        {(tool) => (
          <>
            <Title
              name={`Check ${tool.data.number}`}
              beside={tool.data.properties.class}
              under="A check is never changed once it is on the register; a correction is a new one."
            />
            {recorded === null ? (
              <Asked asking={lists} what="the checklists">
                {({ rows }) => (
                  <CheckEditor tool={tool} lists={listsFor(rows, tool.data)} onRecorded={setRecorded} />
                )}
              </Asked>
            ) : (
              <CheckDone tool={tool} recorded={recorded} onAgain={() => setRecorded(null)} />
            )}
          </>
        )}
      </Asked>
    </Desk>
  );
}

interface EditorProps {
  readonly tool: ToolRecord;
  readonly lists: readonly ChecklistRow[];
  readonly onRecorded: (recorded: Recorded) => void;
}

function CheckEditor({ tool, lists, onRecorded }: EditorProps) {
  const { timeZone, today } = useRegister();
  const draftName = `check.${tool.id}`;
  const [start] = useState(() => emptyCheck(tool.data, lists, nowLocal(timeZone)));
  const form = useForm<CheckForm>({ defaultValues: draftOf(draftName, start) });
  const draft = useDraft(draftName, form);
  const write = useWrite('tool.check');
  const values = form.watch();
  const list = lists.find(({ id }) => id === values.listId) ?? null;
  const kind = chosenKind(values, list);
  const on = values.happenedAt.slice(0, 10) || today;
  const assessing = useCheckAssessment(checkDraft(values, tool.id, tool.data, list, on), kind !== null);
  const faults = checkFaults(write.error?.error.details ?? [], values.rows);
  const onSubmit = form.handleSubmit((typed) =>
    write.mutate(
      { data: checkInput(typed, tool.id, tool.data, list, timeZone) },
      {
        onSuccess: ({ id, quarantined }) => {
          draft.drop();
          const what = list?.data.name ?? typed.kind;
          onRecorded({ id, quarantined, passed: typed.result === 'passed', what });
        },
      },
    ),
  );
  return (
    <FormProvider {...form}>
      <Faults value={faults}>
        <form className="form" onSubmit={onSubmit} noValidate>
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(start);
              draft.drop();
            }}
          />
          <CheckSubject tool={tool} lists={lists} list={list} />
          {kind !== null && (
            <>
              <CheckCautions kind={kind} classes={[tool.data.properties.class]} />
              {list !== null && <CheckAnswers list={list} />}
              {kind === 'comparison' && <CheckComparisons tool={tool.data} assessing={assessing} />}
              {holdsPressure(kind) && <CheckLeak kind={kind} tool={tool.data} />}
              <CheckResult tool={tool} assessment={assessing.data} />
              <fieldset>
                <legend>Who and when</legend>
                <div className="fields">
                  <ChosenPerson label="Checked by" />
                  <Text name="happenedAt" label="When" type="datetime-local" hint="In the site's time zone" />
                  <LongText name="remarks" label="Remarks" whole />
                </div>
              </fieldset>
            </>
          )}
          {write.error && (
            <Failure error={{ ...write.error.error, details: faults }} what="The check was not recorded." />
          )}
          <div className="row">
            <button type="submit" className="act" disabled={write.isPending || kind === null}>
              {values.result === 'failed' ? 'Record the failed check' : 'Record the check'}
            </button>
            <Link className="quiet" href={`/tools/${tool.id}`}>
              Leave without recording
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}
