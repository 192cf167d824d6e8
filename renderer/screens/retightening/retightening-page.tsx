import { useDeferredValue, useId, useState } from 'react';
import { Link } from 'wouter';
import type { RequestInput } from '../../../core/contract/requests.ts';
import {
  type RetighteningAnswerView,
  type RetighteningKind,
  retighteningKind,
} from '../../../core/contract/retightening.ts';
import type { Unit } from '../../../core/units/units.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { roundly, unitLabel } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk } from '../../components/desk.tsx';
import { SeverityMark } from '../../components/marks.tsx';
import { Unknown } from '../../components/number.tsx';
import { JointIndex } from '../joints/joint-index.tsx';
import { JointTitle } from '../joints/joint-page.tsx';

type Said = 'yes' | 'no' | 'not known';

const QUESTIONS = [
  ['bellowsOrClamp', 'Bellows, clamp, compact or insulating joint'],
  ['boltsSound', 'Bolts seen, neither necked nor corroded'],
  ['pressureReduced', 'Pressure reduced'],
] as const;

type Question = (typeof QUESTIONS)[number][0];

const UNASKED: Readonly<Record<Question, Said>> = {
  bellowsOrClamp: 'not known',
  boltsSound: 'not known',
  pressureReduced: 'not known',
};

/** What stands against turning this joint's nuts again now. It says what is missing, never that it is allowed. */
export function RetighteningPage({ id }: { readonly id: string }) {
  const joint = useAsk('joint.get', { id });
  const [kind, setKind] = useState<RetighteningKind>('after the dwell');
  const [temperature, setTemperature] = useState({ text: '', unit: 'degC' as Unit });
  const [said, setSaid] = useState(UNASKED);
  const bolt = useDeferredValue(temperature);
  const asked = useAsk(
    'joint.retightening',
    {
      jointId: id,
      kind,
      boltTemperature: bolt.text.trim() === '' ? null : (bolt as never),
      ...said,
    } satisfies RequestInput<'joint.retightening'>,
    { keep: true },
  );
  return (
    <Desk indexLabel="Joints" index={<JointIndex current={id} />}>
      <Asked asking={joint} what="the joint">
        {(detail) => <JointTitle joint={detail} />}
      </Asked>
      <h2>Turning its nuts again: what stands against it</h2>
      <Cautions answer={asked.data} />
      <div className="form">
        <Kinds kind={kind} onKind={setKind} />
        {kind === 'in service, under pressure' ? (
          <Questions said={said} onSay={(name, value) => setSaid({ ...said, [name]: value })} />
        ) : (
          <BoltTemperature value={temperature} onChange={setTemperature} />
        )}
      </div>
      <Asked asking={asked} what="what stands against it">
        {(answer) => <Answer answer={answer} />}
      </Asked>
      <p>
        <Link href={`/joints/${id}`}>Back to the joint</Link>
      </p>
    </Desk>
  );
}

function Cautions({ answer }: { readonly answer: RetighteningAnswerView | undefined }) {
  if (answer === undefined) return null;
  return (
    <section className="caution-list" aria-label="Cautions">
      <h2>Caution</h2>
      <ul>
        {answer.cautions.map(({ text, source }) => (
          <li key={text} title={source}>
            {text}
          </li>
        ))}
      </ul>
    </section>
  );
}

interface KindsProps {
  readonly kind: RetighteningKind;
  readonly onKind: (kind: RetighteningKind) => void;
}

function Kinds({ kind, onKind }: KindsProps) {
  return (
    <fieldset>
      <legend>Which work</legend>
      <div className="checks">
        {retighteningKind.options.map((each) => (
          <label key={each} className="check">
            <input type="radio" name="kind" checked={kind === each} onChange={() => onKind(each)} />
            {each}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface TemperatureProps {
  readonly value: { readonly text: string; readonly unit: Unit };
  readonly onChange: (value: { text: string; unit: Unit }) => void;
}

function BoltTemperature({ value, onChange }: TemperatureProps) {
  const id = useId();
  return (
    <div className="fields">
      <div className="field">
        <label htmlFor={id}>Temperature of the bolt’s metal</label>
        <div className="quantity">
          <input
            id={id}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            aria-describedby={`${id}-hint`}
            value={value.text}
            onChange={(event) => onChange({ ...value, text: event.target.value })}
          />
          <select
            aria-label="Unit of the temperature"
            value={value.unit}
            onChange={(event) => onChange({ ...value, unit: event.target.value as Unit })}
          >
            {(['degC', 'degF'] as const).map((unit) => (
              <option key={unit} value={unit}>
                {unitLabel(unit)}
              </option>
            ))}
          </select>
        </div>
        <span className="hint" id={`${id}-hint`}>
          Measured on the stud, not the fluid’s
        </span>
      </div>
    </div>
  );
}

interface QuestionsProps {
  readonly said: Readonly<Record<Question, Said>>;
  readonly onSay: (name: Question, value: Said) => void;
}

function Questions({ said, onSay }: QuestionsProps) {
  return (
    <div className="asked-lines">
      {QUESTIONS.map(([name, label]) => (
        <fieldset key={name} className="question">
          <legend>{label}</legend>
          <div className="answer">
            {(['yes', 'no', 'not known'] as const).map((value) => (
              <label key={value} className="check">
                <input
                  type="radio"
                  name={name}
                  checked={said[name] === value}
                  onChange={() => onSay(name, value)}
                />
                {value}
              </label>
            ))}
          </div>
        </fieldset>
      ))}
    </div>
  );
}

function Answer({ answer }: { readonly answer: RetighteningAnswerView }) {
  const { reasons, facts, deferral, window } = answer;
  const { timeZone } = useRegister();
  return (
    <>
      <section aria-labelledby="against" aria-live="polite">
        <h2 id="against">{reasons.length === 0 ? 'No reason against it is known here' : 'Not eligible'}</h2>
        <ul className="plain-list reasons">
          {reasons.map((reason) => (
            <li key={reason}>
              <SeverityMark severity="refusal" />
              <span>{reason.replace(/^not eligible: /, '')}</span>
            </li>
          ))}
        </ul>
        <p>
          {reasons.length === 0
            ? deferral
            : 'With these answered, the site procedure and its signatures would still decide.'}{' '}
          This is no permit.
        </p>
      </section>
      <section aria-labelledby="known">
        <h2 id="known">What the register knows</h2>
        <dl className="lines wide">
          {facts.map(({ name, shown, source }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>
                {shown === null ? <Unknown /> : name === 'Last full pass' ? moment(shown, timeZone) : shown}
              </dd>
              <dd className="from">{source}</dd>
            </div>
          ))}
        </dl>
        {window && (
          <p className="small">
            Below {roundly(window.from, 'degC')} the joint counts as ambient, above{' '}
            {roundly(window.to, 'degC')} friction is not to be relied on ({window.source}).
          </p>
        )}
      </section>
    </>
  );
}
