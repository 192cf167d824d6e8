import { Link, useLocation } from 'wouter';
import type { CustodyStep } from '../../../core/contract/custody.ts';
import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { CERTIFIED } from '../../../core/tools/certified.ts';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Attachments } from '../attachments/attachments.tsx';
import { layOnDesk } from '../custody/desk-state.ts';
import { DueTable } from '../due/due-table.tsx';
import { CertificateOverview } from './certificate-overview.tsx';
import { RecordCases } from './record-cases.tsx';
import { RecordChecks } from './record-checks.tsx';
import { RecordFoot } from './record-foot.tsx';
import { RecordHistory } from './record-history.tsx';
import { RecordIdentity } from './record-identity.tsx';
import { RecordMoves } from './record-moves.tsx';
import { RecordUses } from './record-uses.tsx';
import { ToolIndex } from './tool-index.tsx';
import { ToolMargin } from './tool-margin.tsx';

/** Everything the register knows of one tool, as it stands and as it is printed for whoever asks. */
export function ToolPage({ id }: { readonly id: string }) {
  const record = useAsk('tool.record', { id });
  return (
    <Desk
      indexLabel="Tools"
      index={<ToolIndex current={id} />}
      doings={record.data && <ToolDoings tool={record.data} />}
      margin={record.data && <ToolMargin tool={record.data} />}
    >
      <Asked asking={record} what="the tool">
        {(tool) => <ToolBody tool={tool} />}
      </Asked>
    </Desk>
  );
}

function ToolBody({ tool }: { readonly tool: ToolRecord }) {
  const { data } = tool;
  return (
    <div className="auditor">
      <Title
        name={data.number}
        beside={data.properties.class}
        under={[data.serial && `serial ${data.serial}`, data.place].filter(Boolean).join(' · ')}
        kind={
          <>
            {data.status}
            <span className="small">
              {tool.holder === null ? `version ${tool.version}` : `with ${tool.holder}`}
            </span>
          </>
        }
      />
      <RecordIdentity tool={tool} />
      <section aria-label="Due">
        <h2>Due</h2>
        {tool.due.length === 0 ? (
          <p className="small">
            Nothing is asked for: no certificate, no rule of the site and no checklist names this class.
          </p>
        ) : (
          <DueTable rows={tool.due} bare />
        )}
      </section>
      <CertificateOverview certificates={tool.certificates} />
      <RecordHistory history={tool.history} certified={tool.certificates.length > 0} />
      <RecordChecks checks={tool.checks} />
      <RecordMoves moves={tool.moves} />
      <RecordUses tool={tool} />
      <RecordCases cases={tool.cases} />
      <Attachments owner={{ kind: 'tool', id: tool.id }} rows={tool.attachments} />
      <RecordFoot tool={tool} />
    </div>
  );
}

/** The step that is wanted most from each status; the desk offers the others. */
const WANTED: Readonly<Record<ToolRecord['data']['status'], { step: CustodyStep; words: string }>> = {
  available: { step: 'quarantine', words: 'Quarantine' },
  issued: { step: 'return', words: 'Take it back' },
  'at the laboratory': { step: 'take back from the laboratory', words: 'Take it back' },
  quarantined: { step: 'release from quarantine', words: 'Release' },
  scrapped: { step: 'quarantine', words: 'Quarantine' },
};

function ToolDoings({ tool }: { readonly tool: ToolRecord }) {
  const [, goTo] = useLocation();
  const { data, id } = tool;
  const toDesk = (step: CustodyStep) => {
    layOnDesk([{ id, number: data.number }], { step });
    goTo('/custody');
  };
  const wanted = WANTED[data.status];
  const certified = CERTIFIED.includes(data.properties.class);
  return (
    <>
      {certified && (
        <Link className="act" href={`/tools/${id}/certificates/new`}>
          Add a certificate
        </Link>
      )}
      <Link className={certified ? 'quiet' : 'act'} href={`/tools/${id}/check`}>
        Record a check
      </Link>
      <button type="button" className="quiet" onClick={() => toDesk(wanted.step)}>
        {wanted.words} at the desk
      </button>
      {data.status === 'issued' && (
        <button type="button" className="quiet" onClick={() => toDesk('quarantine')}>
          Quarantine at the desk
        </button>
      )}
      <Link className="quiet" href={`/labels/${id}`}>
        Its label
      </Link>
      <button type="button" className="quiet" onClick={() => window.print()}>
        Print this page
      </button>
      <Link className="quiet" href={`/tools/${id}/edit`}>
        Edit tool
      </Link>
    </>
  );
}
