import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { useAsk } from '../../app/ask.ts';
import { Attachments } from '../attachments/attachments.tsx';

export interface Recorded {
  readonly id: string;
  readonly quarantined: boolean;
  readonly passed: boolean;
  /** Name of the list, or kind of the check. */
  readonly what: string;
}

interface DoneProps {
  readonly tool: ToolRecord;
  readonly recorded: Recorded;
  readonly onAgain: () => void;
}

/** What was recorded, and what usually follows: a case on what the tool did since it was last good. */
export function CheckDone({ tool, recorded, onAgain }: DoneProps) {
  const { number } = tool.data;
  const files = useAsk('attachment.list', { kind: 'event', id: recorded.id });
  const said = useRef<HTMLDivElement>(null);
  // The form that had the focus is gone; reading goes on at what became of it.
  useEffect(() => said.current?.focus(), []);
  return (
    <>
      <div className="said block" role="status" tabIndex={-1} ref={said}>
        <p>
          Recorded: {recorded.what}, {recorded.passed ? 'passed' : 'failed'}.
        </p>
        {!recorded.passed && (
          <p>
            {recorded.quarantined
              ? `${number} is quarantined. No setting takes it until somebody releases it. Take it out of reach and mark it; the register alone keeps nobody from using it.`
              : `${number} was barred already, and stays so.`}
          </p>
        )}
      </div>
      {!recorded.passed && (
        <p className="lead-in">
          Whatever was tightened with it since it was last known to be good may be wrong. A case lists these
          joints, worst first.
        </p>
      )}
      <p className="row">
        {!recorded.passed && (
          <Link className="act" href={`/cases/new/${tool.id}/${recorded.id}`}>
            Open a case on {number}
          </Link>
        )}
        <Link className={recorded.passed ? 'act' : 'quiet'} href={`/tools/${tool.id}`}>
          Page of {number}
        </Link>
        <button type="button" className="quiet" onClick={onAgain}>
          Record another check
        </button>
      </p>
      {files.data && <Attachments owner={{ kind: 'event', id: recorded.id }} rows={files.data.rows} />}
    </>
  );
}
