import { lazy, Suspense, useEffect, useState } from 'react';
import { useFormContext } from 'react-hook-form';
import type { EntryDoubt } from '../../../core/contract/certificate-view.ts';
import type { CertificateAssessment, CertificateInput } from '../../../core/contract/tool.ts';
import {
  certificateFinding,
  hysteresisWords,
  leaveOneOutWords,
} from '../../../core/text/certificate-words.ts';
import type { Unit } from '../../../core/units/units.ts';
import { useAsk } from '../../app/ask.ts';
import { Busy } from '../../components/busy.tsx';
import { bare, useFault } from '../../components/faults.ts';
import { SeverityMark } from '../../components/marks.tsx';
import { type CertificateForm, type Measured, openDoubts } from './certificate-form-values.ts';

const CertificateChart = lazy(() => import('../../charts/certificate-chart.tsx'));
const SETTLE_MS = 350;

/** What the service says of the points as they stand; it is asked once typing rests. */
export function useAssessment(input: CertificateInput) {
  const text = JSON.stringify(input);
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(text), SETTLE_MS);
    return () => clearTimeout(timer);
  }, [text]);
  const data = JSON.parse(settled) as CertificateInput;
  return useAsk('certificate.assess', { data }, { enabled: data.measured.points.length > 0 });
}

interface AssessmentProps {
  readonly kind: Measured;
  readonly assessing: ReturnType<typeof useAssessment>;
  readonly adjusted: boolean;
  readonly units: { readonly pressureUnit: string; readonly torqueUnit: string };
}

/** Doubts, verdict and how well the line fits, before anything is recorded. */
export function Assessment({ kind, assessing, adjusted, units }: AssessmentProps) {
  const { data, error } = assessing;
  const pressureUnit = (units.pressureUnit || 'bar') as Unit;
  const torqueUnit = (units.torqueUnit || 'N.m') as Unit;
  return (
    <section aria-label="What the points say" aria-live="polite">
      <h2>What the points say</h2>
      {error && (
        <div className="small">
          <p>Nothing can be said of the points yet:</p>
          <ul>
            {error.error.details.map((fault) => (
              <li key={fault.field}>
                {bare(fault.field)
                  .replace(/\.(\d+)/g, (_, at) => ` ${Number(at) + 1}`)
                  .replaceAll('.', ', ')}
                : {fault.allowed}
              </li>
            ))}
          </ul>
        </div>
      )}
      {!error && data === undefined && <p className="small">No points are typed yet.</p>}
      {!error && data !== undefined && (
        <>
          <Doubts doubts={data.doubts} />
          <p className="said-once">
            {certificateFinding({
              analysis: data,
              adjusted,
              setIn: kind === 'hand torque' ? torqueUnit : pressureUnit,
            })}
          </p>
          {data.line && <Fit assessment={data} pressureUnit={pressureUnit} torqueUnit={torqueUnit} />}
        </>
      )}
    </section>
  );
}

function Doubts({ doubts }: { readonly doubts: readonly EntryDoubt[] }) {
  return (
    <>
      {doubts.map((doubt) => (
        <article
          key={`${doubt.series} ${doubt.code} ${doubt.text}`}
          className={doubt.refuses ? 'f refusal' : 'f warning'}
        >
          <SeverityMark severity={doubt.refuses ? 'refusal' : 'warning'} />
          <div>
            <h3 className="word">
              {doubt.refuses ? 'Refused' : 'To be confirmed'}: {doubt.code}
            </h3>
            <p>
              {doubt.series === 'as found' && 'As found, '}
              {doubt.refuses && 'allowed: '}
              {doubt.text}.
            </p>
          </div>
        </article>
      ))}
    </>
  );
}

interface FitProps {
  readonly assessment: CertificateAssessment;
  readonly pressureUnit: Unit;
  readonly torqueUnit: Unit;
}

function Fit({ assessment, pressureUnit, torqueUnit }: FitProps) {
  const { line, asFoundLine, hysteresis, leaveOneOut, weighted } = assessment;
  if (line === null) return null;
  return (
    <>
      <dl className="lines words">
        <div>
          <dt>Hysteresis</dt>
          <dd>{hysteresisWords(hysteresis, pressureUnit, torqueUnit)}</dd>
        </div>
        <div>
          <dt>Leave one out</dt>
          <dd>{leaveOneOutWords(leaveOneOut, pressureUnit, torqueUnit)}</dd>
        </div>
        <div>
          <dt>Weighting</dt>
          <dd>
            {weighted
              ? 'by each point’s own uncertainty'
              : 'all points alike; not every point states its own uncertainty'}
          </dd>
        </div>
      </dl>
      <Suspense fallback={<Busy what="Drawing the chart" />}>
        <CertificateChart
          line={line}
          asFound={asFoundLine}
          name="being entered"
          pressureUnit={pressureUnit}
          torqueUnit={torqueUnit}
        />
      </Suspense>
    </>
  );
}

/** One box for each thing that looks wrong but can be right. */
export function Confirmations({ doubts }: { readonly doubts: readonly EntryDoubt[] }) {
  const { watch, setValue } = useFormContext<CertificateForm>();
  const fault = useFault('confirmed');
  const open = openDoubts(doubts);
  const confirmed = watch('confirmed');
  if (open.length === 0) return null;
  return (
    <fieldset data-field="confirmed">
      <legend>To be confirmed, or corrected</legend>
      <div className="stack tight">
        {open.map(({ code, texts, key }) => (
          <label key={key} className="check">
            <input
              type="checkbox"
              checked={confirmed.includes(key)}
              onChange={(event) => {
                const others = confirmed.filter((each) => each !== key);
                setValue('confirmed', event.target.checked ? [...others, key] : others, {
                  shouldDirty: true,
                });
              }}
            />
            <span>
              It stands so on the certificate: {code} <span className="small">({texts.join('; ')})</span>
            </span>
          </label>
        ))}
      </div>
      {fault && <p className="fault-line">{fault.allowed}</p>}
    </fieldset>
  );
}
