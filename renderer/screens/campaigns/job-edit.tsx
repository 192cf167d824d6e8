import { FormProvider, useForm, useFormContext, useWatch } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import { type CampaignRow, type JobRow, jobScope } from '../../../core/contract/campaign.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults, useFault } from '../../components/faults.ts';
import { Check, Choice, LongText, same, Text } from '../../components/fields.tsx';
import { JointPicker } from '../../components/joint-picker.tsx';
import { SignerChoice } from '../../components/people-choice.tsx';
import { emptyJob, type JobForm, jobForm, jobInput } from './job-form-values.ts';
import { PlanIndex } from './plan-index.tsx';

export function NewJob({ campaignId }: { readonly campaignId: string }) {
  const campaign = useAsk('campaign.get', { id: campaignId });
  return (
    <Desk indexLabel="Plan" index={<PlanIndex campaignId={campaignId} />}>
      <Asked asking={campaign} what="the campaign">
        {(row) => (
          <>
            <Title name="New job" under={row.data.name} />
            <JobEditor campaign={row} job={null} />
          </>
        )}
      </Asked>
    </Desk>
  );
}

export function EditJob({ id }: { readonly id: string }) {
  const job = useAsk('job.get', { id }, { fresh: true });
  return (
    <Desk indexLabel="Plan" index={<PlanIndex campaignId={job.data?.data.campaignId ?? null} />}>
      <Asked asking={job} what="the job">
        {(row) => <EditOf job={row} />}
      </Asked>
    </Desk>
  );
}

function EditOf({ job }: { readonly job: JobRow }) {
  const campaign = useAsk('campaign.get', { id: job.data.campaignId });
  return (
    <>
      <Title name={`Edit job ${job.data.number}`} under={`${job.tag}, version ${job.version}`} />
      <Asked asking={campaign} what="the campaign">
        {(row) => <JobEditor campaign={row} job={job} />}
      </Asked>
    </>
  );
}

interface JobEditorProps {
  readonly campaign: CampaignRow;
  readonly job: JobRow | null;
}

function JobEditor({ campaign, job }: JobEditorProps) {
  const { timeZone } = useRegister();
  const form = useForm<JobForm>({
    defaultValues: job === null ? emptyJob() : jobForm(job.data, job.tag, timeZone),
  });
  const save = useWrite('job.save');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    save.mutate(
      {
        id: job?.id ?? null,
        version: job?.version ?? null,
        data: jobInput(values, campaign.id, job?.data.locked ?? [], timeZone),
        personId: values.personId,
        reason: values.reason,
      },
      { onSuccess: (written) => goTo(`/plan/jobs/${written.id}`) },
    ),
  );
  return (
    <FormProvider {...form}>
      <Faults value={save.error?.error.details ?? []}>
        <form className="form" onSubmit={onSubmit} noValidate>
          <fieldset>
            <legend>What is to be done</legend>
            <div className="fields">
              <Text name="number" label="Number of the job" />
              <JointField />
              <Choice name="scope" label="Scope" options={same(jobScope.options)} />
              <Text
                name="boltSet"
                label="Bolt set"
                inputMode="numeric"
                hint="0 is the joint’s own bolting, 1 its first further set"
              />
              <Text name="system" label="System" />
              <Text name="testPack" label="Test pack" offers={campaign.data.testPacks} />
              <Text name="workOrder" label="Work order" />
              <Check name="temporary" label="Temporary: closed for a time, opened again before start-up" />
            </div>
          </fieldset>
          <fieldset>
            <legend>When</legend>
            <div className="fields">
              <Text
                name="earliest"
                label="Not before"
                type="datetime-local"
                hint="Blank is the campaign’s start"
              />
              <Text
                name="latest"
                label="Finished by"
                type="datetime-local"
                hint="Blank is the campaign’s end"
              />
              <Text name="after" label="After jobs" hint="Numbers with ; between" />
              <Text
                name="gapMinutes"
                label="Work between breaking and making, min"
                inputMode="numeric"
                hint="Cleaning, inspection, what it is opened for"
              />
              <Text
                name="breakMinutes"
                label="Time to break, min"
                inputMode="numeric"
                hint="Blank takes the table"
              />
              <Text
                name="makeMinutes"
                label="Time to make up, min"
                inputMode="numeric"
                hint="Blank takes the table"
              />
            </div>
          </fieldset>
          <fieldset>
            <legend>What it needs</legend>
            <div className="fields">
              <Text name="isolationRef" label="Isolation" />
              <Text name="permitRef" label="Permit" />
              <Text name="access" label="Access" hint="Scaffold, crane, confined space" whole />
            </div>
            <CrewChoice crews={campaign.data.crews.map(({ name }) => name)} />
          </fieldset>
          <LongText name="remarks" label="Remarks" />
          {job !== null && <Check name="dropped" label="Dropped: taken out of the scope" />}
          <fieldset>
            <legend>Who and why</legend>
            <div className="fields">
              <Signer />
              <Text name="reason" label="Reason" hint="It stands with this version of the job" whole />
            </div>
          </fieldset>
          {save.error && <Failure error={save.error.error} what="The job was not saved." />}
          <div className="row">
            <button type="submit" className="act" disabled={save.isPending}>
              Save job
            </button>
            <Link
              className="quiet"
              href={job === null ? `/plan/campaigns/${campaign.id}` : `/plan/jobs/${job.id}`}
            >
              Leave without saving
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}

function JointField() {
  const { control, setValue } = useFormContext<JobForm>();
  const joint = useWatch({ control, name: 'joint' });
  const fault = useFault('jointId');
  return (
    <div>
      <JointPicker
        label="Joint"
        name="jointId"
        without={[]}
        chosen={joint === null ? null : { id: joint.id, tag: joint.tag }}
        fault={fault?.allowed ?? null}
        onChoose={(id, tag) => setValue('joint', { id, tag }, { shouldDirty: true })}
      />
    </div>
  );
}

function CrewChoice({ crews }: { readonly crews: readonly string[] }) {
  const { register } = useFormContext<JobForm>();
  const fault = useFault('crews');
  if (crews.length === 0) return null;
  return (
    <fieldset data-field="crews">
      <legend>Crews that may do it; none chosen is any</legend>
      <div className="checks">
        {crews.map((name) => (
          <label className="check" key={name}>
            <input type="checkbox" value={name} {...register('crews')} />
            {name}
          </label>
        ))}
      </div>
      {fault && <p className="fault-line">{fault.allowed}</p>}
    </fieldset>
  );
}

function Signer() {
  const { control, setValue } = useFormContext<JobForm>();
  const chosen = useWatch({ control, name: 'personId' });
  const fault = useFault('personId');
  return (
    <SignerChoice
      label="Changed by"
      name="personId"
      chosen={chosen}
      fault={fault?.allowed ?? null}
      onChoose={(id) => setValue('personId', id)}
    />
  );
}
