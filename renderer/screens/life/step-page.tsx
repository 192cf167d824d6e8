import { FormProvider, useForm, useWatch } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import { rolesInWords } from '../../../core/access/roles.ts';
import type { JointStandingView, JointStep } from '../../../core/contract/life.ts';
import { stepCautions } from '../../../core/text/step-cautions.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Check, Choice, LongText, Text } from '../../components/fields.tsx';
import { LookAlikesMargin } from '../identity/look-alikes.tsx';
import { JointIndex } from '../joints/joint-index.tsx';
import { EvidenceGroups, FormPeople, FormPerson } from './form-fields.tsx';
import { GuardList } from './guard-list.tsx';
import { fieldsOf } from './step-fields.ts';
import { faultsOfForm, type StepForm, startOf, stepInput } from './step-form-values.ts';
import { stepAt, titleOf, WORK_STEPS } from './step-words.ts';

interface StepPageProps {
  readonly id: string;
  readonly path: string | undefined;
}

/** One step of a joint: what can hurt someone, what it needs, and the form it is recorded with. */
export function StepPage({ id, path }: StepPageProps) {
  // Another window may have written since this joint was last looked at.
  const standing = useAsk('joint.standing', { id }, { fresh: true });
  const step = stepAt(path);
  return (
    <Desk
      indexLabel="Joints"
      index={<JointIndex current={id} />}
      margin={
        step !== null &&
        standing.data && (
          <>
            <Needs standing={standing.data} step={step} />
            {(step === 'release' || step === 'break') && <LookAlikesMargin id={id} />}
          </>
        )
      }
    >
      {step === null ? (
        <Title name="There is no such step" />
      ) : (
        <Asked asking={standing} what="the state of the joint">
          {(data) => (
            <>
              <Title
                name={titleOf(step)}
                beside={data.tag}
                under={`Now ${data.state}`}
                kind={<Link href={`/joints/${id}`}>Back to {data.tag}</Link>}
              />
              <Cautions step={step} />
              <StepEditor
                standing={data}
                step={step}
                onStale={() => {
                  void standing.refetch();
                }}
              />
            </>
          )}
        </Asked>
      )}
    </Desk>
  );
}

function Cautions({ step }: { readonly step: JointStep }) {
  const cautions = stepCautions(step);
  if (cautions.length === 0) return null;
  return (
    <section className="caution-list" aria-label="Cautions">
      <h2>Caution</h2>
      <ul>
        {cautions.map(({ text, source }) => (
          <li key={text} title={source}>
            {text}
          </li>
        ))}
      </ul>
    </section>
  );
}

interface OfStep {
  readonly standing: JointStandingView;
  readonly step: JointStep;
}

function Needs({ standing, step }: OfStep) {
  const open = standing.steps.find((one) => one.step === step);
  return (
    <section aria-labelledby="needs">
      <h2 id="needs">What this step needs</h2>
      {open === undefined ? (
        <p>
          The joint is {standing.state}: {step} does not lead on from there.
        </p>
      ) : (
        <>
          <GuardList guards={open.guards} />
          <p className="small">Taken by: {rolesInWords(open.roles)}.</p>
        </>
      )}
    </section>
  );
}

interface EditorProps extends OfStep {
  readonly onStale: () => void;
}

function StepEditor({ standing, step, onStale }: EditorProps) {
  const { timeZone } = useRegister();
  const start = startOf(step, standing);
  const draftName = `joint-step.${standing.jointId}.${step}`;
  const form = useForm<StepForm>({ defaultValues: draftOf(draftName, start) });
  const draft = useDraft(draftName, form);
  const take = useWrite('joint.step');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    take.mutate(
      { seen: standing.seen, data: stepInput(standing.jointId, step, values, timeZone) },
      {
        onSuccess: () => {
          draft.drop();
          goTo(`/joints/${standing.jointId}`);
        },
        onError: onStale,
      },
    ),
  );
  const leadsOn = standing.steps.some((one) => one.step === step && one.open);
  return (
    <FormProvider {...form}>
      <Faults value={faultsOfForm(take.error?.error.details ?? [])}>
        <form className="form" aria-label={`Step: ${step}`} onSubmit={onSubmit} noValidate>
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(start);
              draft.drop();
            }}
          />
          {step === 'assess' && <ClassChoice />}
          <EvidenceGroups groups={fieldsOf(step)} />
          <fieldset>
            <legend>Who and when</legend>
            <div className="fields">
              <FormPerson name="by" label="Taken by" signs />
              <Text name="happenedAt" label="When" type="datetime-local" hint="Empty for now" />
            </div>
            <FormPeople label="Who did the work beside them" />
          </fieldset>
          {WORK_STEPS.includes(step) && step !== 'report leak' && (
            <ReallyDone open={!leadsOn || take.error?.error.code === 'refused'} step={step} />
          )}
          {take.error && <Failure error={take.error.error} what="The step was not taken." />}
          <div className="row">
            <button type="submit" className="act" disabled={take.isPending}>
              Record: {step}
            </button>
            <Link className="quiet" href={`/joints/${standing.jointId}`}>
              Leave without recording
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}

function ClassChoice() {
  const rules = useAsk('classRule.list', {});
  const rows = rules.data?.rows.filter(({ data }) => !data.retired) ?? [];
  return (
    <fieldset>
      <legend>Class</legend>
      <div className="fields">
        <Choice
          name="class"
          label="Class"
          blank="Choose the class"
          options={rows.map((row) => ({
            value: row.id ?? row.data.level,
            words: row.origin === 'site' ? `${row.data.name} (${row.data.level})` : row.data.name,
          }))}
        />
      </div>
      <p className="small">
        <Link href="/class-rules">What follows from each class</Link>
      </p>
    </fieldset>
  );
}

function ReallyDone({ open, step }: { readonly open: boolean; readonly step: JointStep }) {
  const done: boolean = useWatch({ name: 'reallyDone' });
  if (!open && !done) return null;
  return (
    <fieldset>
      <legend>Work that was really done</legend>
      <p className="small">
        What was really done is always recorded. Out of order it is flagged, and the joint keeps its state
        until an engineer has decided.
      </p>
      <Check name="reallyDone" label={`${titleOf(step)} was really done, although it is not in order`} />
      {done && <LongText name="doneBecause" label="How it came about" whole />}
    </fieldset>
  );
}
