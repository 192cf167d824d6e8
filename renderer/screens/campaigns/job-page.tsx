import { Link } from 'wouter';
import type { JobRow } from '../../../core/contract/campaign.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ChangeTable } from './change-table.tsx';
import { PlanIndex } from './plan-index.tsx';

export function JobPage({ id }: { readonly id: string }) {
  const job = useAsk('job.get', { id });
  return (
    <Desk
      indexLabel="Plan"
      index={<PlanIndex campaignId={job.data?.data.campaignId ?? null} />}
      doings={
        <>
          <Link className="act" href={`/plan/jobs/${id}/edit`}>
            Edit the job
          </Link>
          {job.data && (
            <Link className="quiet" href={`/joints/${job.data.data.jointId}`}>
              To the joint
            </Link>
          )}
        </>
      }
    >
      <Asked asking={job} what="the job">
        {(row) => <JobBody job={row} />}
      </Asked>
    </Desk>
  );
}

function JobBody({ job }: { readonly job: JobRow }) {
  const { timeZone } = useRegister();
  const { data } = job;
  const at = (instant: string | null, otherwise: string) =>
    instant === null ? otherwise : moment(instant, timeZone);
  const minutes = (value: number | null) => (value === null ? 'from the table of durations' : `${value} min`);
  return (
    <>
      <Title
        name={data.number}
        beside="job"
        under={`${job.tag}, ${job.location || job.unit}`}
        kind={
          <>
            {data.scope}
            <span className="small">
              {data.dropped ? 'dropped from the scope' : job.state}, version {job.version}
            </span>
          </>
        }
      />
      <dl className="lines">
        <Line name="Joint" value={`${job.tag}, ${job.unit}`} />
        <Line name="Class" value={job.criticality ?? 'not known'} />
        <Line name="System" value={data.system || 'none named'} />
        <Line name="Test pack" value={data.testPack || 'none named'} />
        <Line name="Work order" value={data.workOrder || 'none named'} />
        <Line name="Isolation" value={data.isolationRef || 'not known'} />
        <Line name="Permit" value={data.permitRef || 'not known'} />
        <Line name="Access" value={data.access || 'nothing named'} />
        <Line name="Not before" value={at(data.earliest, 'the campaign’s start')} />
        <Line name="Finished by" value={at(data.latest, 'the campaign’s end')} />
        <Line name="After jobs" value={data.after.join(', ') || 'none'} />
        <Line name="Crews" value={data.crews.join(', ') || 'any'} />
        {data.scope !== 'make' && <Line name="Time to break" value={minutes(data.breakMinutes)} />}
        {data.scope !== 'break' && <Line name="Time to make up" value={minutes(data.makeMinutes)} />}
        {data.scope === 'break and make' && <Line name="Work between" value={`${data.gapMinutes} min`} />}
        {data.locked.map((lock) => (
          <Line
            key={lock.part}
            name={`Fixed, ${lock.part}`}
            value={`${lock.set}, ${lock.crew}, ${moment(lock.startsAt, timeZone)}`}
          />
        ))}
      </dl>
      {data.remarks && (
        <section>
          <h2>Remarks</h2>
          <p>{data.remarks}</p>
        </section>
      )}
      <JobHistory job={job} />
    </>
  );
}

function Line({ name, value }: { readonly name: string; readonly value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}

const MOST = 100;

function JobHistory({ job }: { readonly job: JobRow }) {
  const input = { campaignId: job.data.campaignId, jobId: job.id, page: 1, pageSize: MOST };
  const changes = useAsk('job.changes', input);
  return (
    <section>
      <h2>What changed</h2>
      <Asked asking={changes} what="the changes">
        {({ rows }) => <ChangeTable rows={rows} ofOneJob />}
      </Asked>
    </section>
  );
}
