import { lazy, memo, Suspense, useEffect, useState } from 'react';
import { useFormContext } from 'react-hook-form';
import type { EntryDoubt } from '../../../core/contract/certificate-view.ts';
import type { FieldFault } from '../../../core/contract/errors.ts';
import type { CertificateAssessment, CertificateInput } from '../../../core/contract/tool.ts';
import {
  certificateFinding,
  hysteresisWords,
  leaveOneOutWords,
} from '../../../core/text/certificate-words.ts';
import type { Unit } from '../../../core/units/units.ts';
import { useAsk } from '../../app/ask.ts';
import { counted } from '../../app/text/number.ts';
import { Busy } from '../../components/busy.tsx';
import { useFault } from '../../components/faults.ts';
import { pathWords, useFieldLabels } from '../../components/field-label.ts';
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
  const asked = data.measured.points.length > 0;
  const { data: said, error } = useAsk('certificate.assess', { data }, { enabled: asked, keep: true });
  return { said: asked ? said : undefined, faults: asked ? error?.error.details : undefined, asked };
}

interface AssessmentProps {
  readonly kind: Measured;
  readonly said: CertificateAssessment | undefined;
  /** What keeps anything from being said, at the form's own fields; empty when nothing does. */
  readonly faults: readonly FieldFault[];
  readonly asked: boolean;
  readonly adjusted: boolean;
  readonly units: { readonly pressureUnit: string; readonly torqueUnit: string };
}

/** Doubts, verdict and how well the line fits, before anything is recorded; only its first sentence is read out. */
export function Assessment({ kind, said, faults, asked, adjusted, units }: AssessmentProps) {
  const pressureUnit = (units.pressureUnit || 'bar') as Unit;
  const torqueUnit = (units.torqueUnit || 'N.m') as Unit;
  const finding =
    said &&
    certificateFinding({
      analysis: said,
      adjusted,
      setIn: kind === 'hand torque' ? torqueUnit : pressureUnit,
    });
  return (
    <section aria-label="What the points say" className="stack tight">
      <h2>What the points say</h2>
      <p role="status" className="said-once">
        {spoken({ asked, faults, doubts: said?.doubts ?? [], finding })}
      </p>
      {faults.length > 0 ? (
        <MissingList faults={faults} />
      ) : (
        said && (
          <>
            <Doubts doubts={said.doubts} />
            {said.doubts.length > 0 && <p className="said-once">{finding}</p>}
            {said.line && <Fit assessment={said} pressureUnit={pressureUnit} torqueUnit={torqueUnit} />}
          </>
        )
      )}
    </section>
  );
}

interface Spoken {
  readonly asked: boolean;
  readonly faults: readonly FieldFault[];
  readonly doubts: readonly EntryDoubt[];
  readonly finding: string | undefined;
}

/** The one sentence that is read out when the points change. */
function spoken({ asked, faults, doubts, finding }: Spoken): string {
  if (!asked) return 'No points are typed yet.';
  if (faults.length > 0)
    return `Nothing can be said of the points yet: ${counted(faults.length, 'field')} to put right.`;
  const refused = doubts.filter(({ refuses }) => refuses).length;
  if (refused > 0) return `They can not be recorded as they stand: ${counted(refused, 'refusal')}.`;
  if (doubts.length > 0)
    return `${counted(openDoubts(doubts).length, 'thing')} to be confirmed, or corrected.`;
  return finding ?? 'Looking at the points.';
}

function MissingList({ faults }: { readonly faults: readonly FieldFault[] }) {
  const names = useFieldLabels(faults);
  return (
    <ul className="reasons small">
      {faults.map((fault, at) => (
        <li key={`${fault.field} ${fault.allowed}`}>
          {names[at] ?? pathWords(fault.field)}: {fault.allowed}
        </li>
      ))}
    </ul>
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

/** Drawn again only when the answer changes, not with every key. */
const Fit = memo(function Fit({ assessment, pressureUnit, torqueUnit }: FitProps) {
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
});

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
