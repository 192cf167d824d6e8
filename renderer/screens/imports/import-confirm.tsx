import { useState } from 'react';
import { Link } from 'wouter';
import type { ImportInput, ImportKind, ImportReport } from '../../../core/contract/import.ts';
import { useWrite } from '../../app/ask.ts';
import { count } from '../../app/text/number.ts';
import { Busy } from '../../components/busy.tsx';
import { Failure } from '../../components/failure.tsx';
import { IMPORT_KINDS } from './import-kinds.ts';

interface ConfirmImportProps {
  readonly kind: ImportKind;
  readonly input: ImportInput;
  readonly report: ImportReport;
}

/** The write itself, naming what it will write. Faulty rows are left out only when the person says so. */
export function ConfirmImport({ kind, input, report }: ConfirmImportProps) {
  const [leaveOut, setLeaveOut] = useState(false);
  const confirm = useWrite('import.confirm');
  const words = IMPORT_KINDS[kind];
  const amount = report.added + report.changed;
  const noun = amount === 1 ? words.one : words.many;
  const faulty = report.faultyRows > 0;
  if (report.fileFault !== null)
    return <p className="said">This file can not be imported as it is. Nothing was written.</p>;
  if (confirm.data) return <Done kind={kind} campaignId={input.campaignId ?? null} done={confirm.data} />;
  return (
    <section aria-labelledby="write" className="stack">
      <h2 id="write">Write to the register</h2>
      {faulty && (
        <label className="check">
          <input type="checkbox" checked={leaveOut} onChange={(event) => setLeaveOut(event.target.checked)} />
          Leave out{' '}
          {report.faultyRows === 1 ? 'the faulty row' : `the ${count(report.faultyRows)} faulty rows`}
        </label>
      )}
      {confirm.isPending ? (
        <Busy what={`Writing ${count(amount)} ${noun}`} />
      ) : (
        <div>
          <button
            type="button"
            className="act"
            disabled={amount === 0 || (faulty && !leaveOut)}
            aria-describedby="write-why"
            onClick={() =>
              confirm.mutate({
                data: { ...input, fingerprint: report.fingerprint, leaveOutFaulty: leaveOut },
              })
            }
          >
            Write {count(amount)} {noun}
          </button>
          <p className="small after" id="write-why">
            {amount === 0
              ? 'There is nothing new or changed to write.'
              : faulty && !leaveOut
                ? 'Mend the faulty rows in the file, or leave them out.'
                : `${count(report.added)} new, ${count(report.changed)} changed; all of it or nothing.`}
          </p>
        </div>
      )}
      {confirm.error && <Failure error={confirm.error.error} what="Nothing was written." />}
    </section>
  );
}

interface DoneProps {
  readonly kind: ImportKind;
  readonly campaignId: string | null;
  readonly done: { added: number; changed: number; unchanged: number; leftOut: number };
}

function Done({ kind, campaignId, done }: DoneProps) {
  const words = IMPORT_KINDS[kind];
  const home = campaignId === null ? words.home : `${words.home}/${campaignId}`;
  return (
    <section className="said" role="status">
      <p>
        <b>Written.</b> {count(done.added)} new, {count(done.changed)} changed, {count(done.unchanged)}{' '}
        already so, {count(done.leftOut)} left out. <Link href={home}>To the {words.many}</Link>
      </p>
    </section>
  );
}
