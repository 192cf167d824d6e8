import { useQueryClient } from '@tanstack/react-query';
import type { HistoryJob } from '../../../core/contract/history.ts';
import { useAsk, usePreview } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { inFours } from '../../app/text/head.ts';
import { count, counted } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import { ExportDone } from './export-done.tsx';
import { VerifyForm } from './verify-form.tsx';
import { VerifyResult } from './verify-result.tsx';

const ASK_AGAIN_MS = 250;

/** Whether the history is still the one that was recorded, as far as this PC can tell. */
export function VerifyPage() {
  const client = useQueryClient();
  const progress = useAsk(
    'history.progress',
    { id: null },
    {
      fresh: true,
      again: (job) => ((job as HistoryJob | null)?.state === 'running' ? ASK_AGAIN_MS : null),
    },
  );
  const verify = usePreview('history.verify');
  const write = usePreview('history.export');
  const cancel = usePreview('history.cancel');
  const then = { onSuccess: () => client.invalidateQueries({ queryKey: ['history.progress'] }) };
  const job = progress.data ?? null;
  const running = job?.state === 'running';
  const failure = verify.error ?? write.error ?? cancel.error ?? progress.error;
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />} margin={<Limits />}>
      <Title
        name="Verify the history"
        under="Every record is hashed together with the one before it. This reads them all again."
      />
      <VerifyForm
        busy={running || verify.isPending || write.isPending}
        onVerify={(input) => verify.mutate(input, then)}
        onExport={() => write.mutate({}, then)}
      />
      {failure && <Failure error={failure.error} what="It was not started." />}
      {job !== null && (
        <section aria-label="Result">
          {running ? (
            <Running job={job} onCancel={() => cancel.mutate({ id: job.id }, then)} />
          ) : (
            <Ended job={job} />
          )}
        </section>
      )}
    </Desk>
  );
}

function Running({ job, onCancel }: { readonly job: HistoryJob; readonly onCancel: () => void }) {
  const share = job.total === 0 ? 0 : Math.min(1, job.done / job.total);
  const what = job.task === 'verify' ? 'Reading the history' : 'Writing the export';
  return (
    <div className="busy">
      <p role="status">{what}</p>
      <progress aria-label={what} value={share} max={1} />
      <p className="small">
        {Math.floor(share * 100)} % after {count(Math.floor(job.seconds))} s. Work goes on meanwhile.
      </p>
      <button type="button" className="quiet" onClick={onCancel}>
        Cancel
      </button>
    </div>
  );
}

function Ended({ job }: { readonly job: HistoryJob }) {
  const { timeZone } = useRegister();
  const task = job.task === 'verify' ? 'The verification' : 'The export';
  const when = `${moment(job.startedAt, timeZone)}, ${job.seconds.toFixed(1)} s`;
  if (job.state === 'cancelled') {
    return (
      <p role="status">
        {task} of {when} was cancelled. Nothing is known from it.
      </p>
    );
  }
  if (job.state === 'failed') {
    return (
      <div className="failure" role="alert">
        <p>
          <b>{task} did not finish.</b> {job.problem} Nothing is known from it.
        </p>
      </div>
    );
  }
  if (job.exported !== null) return <ExportDone exported={job.exported} when={when} />;
  return job.verification && <VerifyResult verification={job.verification} when={when} />;
}

function Limits() {
  const register = useRegister();
  return (
    <>
      <section>
        <h2>Head now</h2>
        <p className="small seal">
          {register.head === null ? 'nothing recorded yet' : inFours(register.head)}
        </p>
        <p className="small">
          Over {counted(register.events, 'record')}. It stands at the foot of every page printed from here.
        </p>
      </section>
      <section>
        <h2>What this can not show alone</h2>
        <p className="small">
          Somebody who can write the register’s file and knows the program can hash the whole history anew,
          cut off its end, or put an older file in its place. Each of these is sound to itself.
        </p>
        <p className="small">
          A head noted outside shows all three: type one from a printed page, an old export or a backup kept
          elsewhere. Backups and exports in the data folder are compared too, but whoever can write the
          register can write them as well.
        </p>
        <p className="small">
          Requests that were refused have a chain of their own, which the head does not cover: that its last
          ones were cut off does not show.
        </p>
        <p className="small">
          It says that nothing was changed since it was recorded, not that what was recorded is true.
        </p>
      </section>
    </>
  );
}
