import { FormProvider, useForm } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import { useAsk, usePreview, useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { nowLocal } from '../../app/text/time.ts';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Check, LongText, Text } from '../../components/fields.tsx';
import { RoomIndex } from '../tools/room-index.tsx';
import { AffectedTable } from './affected-table.tsx';
import { type CaseForm, caseInput, emptyCase } from './case-form-values.ts';
import { CaseSubject } from './case-subject.tsx';
import { ChosenPerson } from './chosen-person.tsx';
import { affectedWords, OtherUses, WindowSection } from './recall-sections.tsx';

interface NewCaseProps {
  /** Tool it is opened from, and the certificate or check that says it is wrong. */
  readonly toolId?: string | undefined;
  readonly evidenceId?: string | undefined;
}

export function NewCase({ toolId, evidenceId }: NewCaseProps) {
  const record = useAsk('tool.record', { id: toolId ?? '' }, { enabled: toolId !== undefined });
  const ready = toolId === undefined || record.data !== undefined || record.error !== null;
  const check = record.data?.checks.some(({ id }) => id === evidenceId) ?? false;
  const evidence = evidenceId === undefined ? '' : `${check ? 'check' : 'certificate'}:${evidenceId}`;
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      <Title
        name="Open a case"
        under="First look at what it reaches; nothing is recorded until the case is opened."
      />
      {ready && <CaseEditor toolId={toolId ?? ''} evidence={evidence} />}
    </Desk>
  );
}

interface CaseEditorProps {
  readonly toolId: string;
  readonly evidence: string;
}

function CaseEditor({ toolId, evidence }: CaseEditorProps) {
  const { timeZone } = useRegister();
  const draftName = `case.${toolId}.${evidence}`;
  const start = emptyCase(toolId, evidence, nowLocal(timeZone));
  const form = useForm<CaseForm>({ defaultValues: draftOf(draftName, start) });
  const draft = useDraft(draftName, form);
  const preview = usePreview('case.preview');
  const open = useWrite('case.open');
  const [, goTo] = useLocation();
  const data = caseInput(form.watch(), timeZone);
  // What was looked at is what is opened: a change asks for another look.
  const seen = preview.data !== undefined && JSON.stringify(preview.variables?.data) === JSON.stringify(data);
  const onSubmit = form.handleSubmit(() => preview.mutate({ data }));
  const onOpen = () =>
    open.mutate(
      { data },
      {
        onSuccess: ({ id }) => {
          draft.drop();
          goTo(`/cases/${id}`);
        },
      },
    );
  const failure = open.error ?? preview.error;
  return (
    <FormProvider {...form}>
      <Faults value={failure?.error.details ?? []}>
        <form className="form" onSubmit={onSubmit} noValidate>
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(start);
              draft.drop();
            }}
          />
          <CaseSubject />
          <fieldset>
            <legend>Opened</legend>
            <div className="fields">
              <ChosenPerson label="Opened by" />
              <Text name="happenedAt" label="When" type="datetime-local" hint="In the site's time zone" />
              <Text
                name="since"
                label="Suspect since"
                type="date"
                hint="Empty: since the last good certificate or check"
              />
            </div>
            {form.watch('about') === 'tool' && (
              <Check name="quarantine" label="Quarantine the tool at once" />
            )}
            <LongText name="remarks" label="Remarks" />
          </fieldset>
          {failure && <Failure error={failure.error} what="Nothing was recorded." />}
          <div className="row">
            <button type="submit" className={seen ? 'quiet' : 'act'} disabled={preview.isPending}>
              See what it reaches
            </button>
            <Link className="quiet" href="/cases">
              Leave without opening
            </Link>
          </div>
        </form>
        {seen && preview.data && (
          <div className="leaf-part">
            <section aria-label="Preview">
              <h2>What it reaches</h2>
              <p>
                {preview.data.subject}, {preview.data.basis}. {affectedWords(preview.data)}
              </p>
            </section>
            <WindowSection recall={preview.data} />
            <section aria-label="Affected joints">
              <h2>Affected joints, worst first</h2>
              <AffectedTable affected={preview.data.affected} choosing={null} />
            </section>
            <OtherUses recall={preview.data} />
            <p className="after">
              <button type="button" className="act" disabled={open.isPending} onClick={onOpen}>
                Open the case on {preview.data.subject}
              </button>
            </p>
          </div>
        )}
      </Faults>
    </FormProvider>
  );
}
