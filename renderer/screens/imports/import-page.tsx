import { useState } from 'react';
import { Link, useSearchParams } from 'wouter';
import type { ImportInput, ImportKind } from '../../../core/contract/import.ts';
import { useAsk, usePreview } from '../../app/ask.ts';
import { Busy } from '../../components/busy.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { base64Of, csv, saveText } from './file-text.ts';
import { ConfirmImport } from './import-confirm.tsx';
import { IMPORT_KINDS, kindOf } from './import-kinds.ts';
import {
  type Answers,
  asOptions,
  ImportQuestions,
  NOTHING_MEASURED,
  openQuestions,
  UNANSWERED,
} from './import-options.tsx';
import { ImportReportView } from './import-report.tsx';

export function ImportPage({ kind }: { readonly kind: string }) {
  const known = kindOf(kind);
  return (
    <Desk
      indexLabel="Imports"
      index={<KindIndex current={known} />}
      margin={known && <Columns kind={known} />}
    >
      {known === null ? (
        <Title name="There is no such import" />
      ) : (
        <>
          <Title
            name={IMPORT_KINDS[known].title}
            under="From a text file with one heading line. Nothing is written before it is confirmed."
          />
          <Importer kind={known} />
        </>
      )}
    </Desk>
  );
}

function Importer({ kind }: { readonly kind: ImportKind }) {
  const [file, setFile] = useState<File | null>(null);
  const { measured } = IMPORT_KINDS[kind];
  const [answers, setAnswers] = useState<Answers>(measured ? UNANSWERED : NOTHING_MEASURED);
  const [campaignId, setCampaignId] = useState(useSearchParams()[0].get('campaign') ?? '');
  const [seen, setSeen] = useState<ImportInput | null>(null);
  const [unread, setUnread] = useState<string | null>(null);
  const preview = usePreview('import.preview');
  const open = [
    ...(kind === 'jobs' && campaignId === '' ? ['campaign'] : []),
    ...(file === null ? ['file'] : []),
    ...openQuestions(answers),
  ];

  // What was previewed is what is written: a changed answer makes the preview void.
  const forget = () => {
    preview.reset();
    setSeen(null);
    setUnread(null);
  };
  const onPreview = async () => {
    if (file === null) return;
    let content: string;
    try {
      content = await base64Of(file);
    } catch {
      setUnread(`${file.name} could not be read. It may have been moved, or be open in another program.`);
      return;
    }
    const input: ImportInput = {
      kind,
      fileName: file.name,
      content,
      options: asOptions(answers),
      campaignId: kind === 'jobs' ? campaignId : null,
    };
    setSeen(input);
    preview.mutate(input);
  };
  return (
    <>
      <div className="form">
        {kind === 'jobs' && (
          <CampaignQuestion
            value={campaignId}
            onAnswer={(id) => {
              setCampaignId(id);
              forget();
            }}
          />
        )}
        <div className="field">
          <label htmlFor="file">File</label>
          <input
            id="file"
            type="file"
            accept=".csv,.txt,.tsv,text/csv,text/plain"
            onChange={(event) => {
              setFile(event.target.files?.[0] ?? null);
              forget();
            }}
          />
        </div>
        <ImportQuestions
          answers={answers}
          measured={measured}
          onAnswer={(next) => {
            setAnswers(next);
            forget();
          }}
        />
        <div>
          <button
            type="button"
            className={preview.data ? 'quiet' : 'act'}
            disabled={open.length > 0 || preview.isPending}
            aria-describedby="preview-why"
            onClick={onPreview}
          >
            Preview the file
          </button>
          {open.length > 0 && (
            <p className="small after" id="preview-why">
              Still to be chosen: {open.join(', ')}.
            </p>
          )}
        </div>
      </div>
      {unread && (
        <div className="failure" role="alert">
          {unread}
        </div>
      )}
      {preview.isPending && <Busy what="Reading the file" />}
      {preview.error && <Failure error={preview.error.error} what="The file was not read." />}
      {preview.data && seen && (
        <>
          <ImportReportView report={preview.data} fileName={seen.fileName} />
          <ConfirmImport key={preview.data.fingerprint} kind={kind} input={seen} report={preview.data} />
        </>
      )}
    </>
  );
}

interface CampaignQuestionProps {
  readonly value: string;
  readonly onAnswer: (id: string) => void;
}

function CampaignQuestion({ value, onAnswer }: CampaignQuestionProps) {
  const campaigns = useAsk('campaign.list', { closed: false, page: 1, pageSize: 200 });
  const rows = campaigns.data?.rows ?? [];
  return (
    <div className="field">
      <label htmlFor="campaign">Campaign the jobs are of</label>
      <select id="campaign" value={value} onChange={(event) => onAnswer(event.target.value)}>
        <option value="">Choose</option>
        {rows.map(({ id, data }) => (
          <option key={id} value={id}>
            {data.name}
          </option>
        ))}
      </select>
      {campaigns.data && rows.length === 0 && (
        <span className="hint">
          No campaign is open. <Link href="/plan/campaigns/new">Enter one first</Link>
        </span>
      )}
      {campaigns.error && <Failure error={campaigns.error.error} what="The campaigns were not read." />}
    </div>
  );
}

function KindIndex({ current }: { readonly current: ImportKind | null }) {
  return (
    <>
      <h2>Imports</h2>
      <ol>
        {(Object.keys(IMPORT_KINDS) as ImportKind[]).map((kind) => (
          <li key={kind}>
            <Link
              className="entry"
              href={`/import/${kind}`}
              aria-current={kind === current ? 'page' : undefined}
            >
              <b>
                {kind === 'certificate'
                  ? 'A certificate'
                  : IMPORT_KINDS[kind].many.replace(/^./, (c) => c.toUpperCase())}
              </b>
            </Link>
          </li>
        ))}
      </ol>
    </>
  );
}

function Columns({ kind }: { readonly kind: ImportKind }) {
  const columns = useAsk('import.columns', { kind });
  const rows = columns.data?.rows ?? [];
  return (
    <section aria-labelledby="columns">
      <h2 id="columns">Columns a file may have</h2>
      <button
        type="button"
        className="quiet"
        onClick={() => saveText(`${kind}.csv`, csv([rows.map((column) => column.heading)]))}
      >
        Save an empty file with these columns
      </button>
      <dl className="columns">
        {rows.map((column) => (
          <div key={column.heading}>
            <dt>
              <b>{column.heading}</b> {column.needed && <span className="flag">needed</span>}
            </dt>
            <dd>
              {column.meaning}
              {column.example && <span className="faint"> · as {column.example}</span>}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
