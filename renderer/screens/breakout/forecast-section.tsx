import { useId, useState } from 'react';
import type { Forecast, Spread } from '../../../core/contract/forecast.ts';
import type { ToolSetInput } from '../../../core/contract/setting.ts';
import { useAsk } from '../../app/ask.ts';
import { roundly, sensible } from '../../app/text/number.ts';
import { Asked } from '../../components/asked.tsx';
import { Measure, Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { ToolSetFields } from '../../components/tool-set-fields.tsx';

/** What to expect when this joint is opened next, with what it rests on and what can't be said. */
export function ForecastSection({ id }: { readonly id: string }) {
  const field = useId();
  const [day, setDay] = useState('');
  const [tools, setTools] = useState<ToolSetInput>(NO_TOOLS);
  const chosen = tools.driveId !== null;
  const asked = useAsk(
    'breakout.forecast',
    { jointId: id, on: day === '' ? null : day, tools: chosen ? tools : null },
    { keep: true },
  );
  return (
    <section aria-labelledby="forecast">
      <h2 id="forecast">The next opening</h2>
      <div className="fields no-print">
        <div className="field">
          <label htmlFor={field}>Day of the opening</label>
          <input
            id={field}
            type="date"
            value={day}
            aria-describedby={`${field}-hint`}
            onChange={(event) => setDay(event.target.value)}
          />
          <span className="hint" id={`${field}-hint`}>
            Empty: today
          </span>
        </div>
      </div>
      <details className="folded no-print">
        <summary>
          Tools it is to be opened with{' '}
          <span className="small">{chosen ? 'a wrench is chosen' : 'none chosen'}</span>
        </summary>
        <div className="fold">
          <ToolSetFields tools={tools} onChange={setTools} />
        </div>
      </details>
      <Asked asking={asked} what="the forecast">
        {(forecast) => <Expected forecast={forecast} />}
      </Asked>
    </section>
  );
}

function Expected({ forecast }: { readonly forecast: Forecast }) {
  const { finding, advice, evidence, missing, installed } = forecast;
  return (
    <div className="told">
      <section className="caution-list" aria-label="Cautions">
        <h3>Caution</h3>
        <ul>
          {advice.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      </section>
      <p>{finding}</p>
      <p className="small">
        {evidence.words} Before them: {evidence.prior}
      </p>
      {installed && (
        <p>
          Installed torque: <Measure si={installed.torque} unit="N.m" />{' '}
          <span className="small">{installed.source}</span>
        </p>
      )}
      {missing.length > 0 && <p>Not known: {missing.join('; ')}.</p>}
      <Spreads forecast={forecast} />
      <Means forecast={forecast} />
    </div>
  );
}

const NO_TOOLS: ToolSetInput = {
  driveId: null,
  cassetteId: null,
  reducerIds: [],
  hoseIds: [],
  pumpId: null,
  gaugeId: null,
};

const ROWS = [
  ['worstBolt', 'the worst bolt that turns'],
  ['oneBolt', 'any one bolt that turns'],
  ['middle', 'middle of all bolts'],
] as const;

const POINTS = ['low', 'median', 'high'] as const;

function Spreads({ forecast: { ratio, torque } }: { readonly forecast: Forecast }) {
  if (ratio === null) return null;
  return (
    <SideScroll>
      <table className="tab">
        <caption className="small">
          Of 100 openings like this one, 5 stay below the first value, 50 below the second, 95 below the
          third.
        </caption>
        <thead>
          <tr>
            <th scope="col">Breakout of</th>
            {['5 %', '50 %', '95 %'].map((part) => (
              <th key={part} scope="col" className="num">
                {part} <span className="unit">× installed</span>
              </th>
            ))}
            {['5 %', '50 %', '95 %'].map((part) => (
              <th key={part} scope="col" className="num">
                {part} <span className="unit">N·m</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {ROWS.map(([key, words]) => (
            <tr key={key}>
              <th scope="row">{words}</th>
              <Cells spread={ratio[key]} show={(value) => sensible(value, 3)} />
              <Cells spread={torque?.[key] ?? null} show={(value) => sensible(value, 3)} />
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

interface CellsProps {
  readonly spread: Spread | null;
  readonly show: (value: number) => string;
}

function Cells({ spread, show }: CellsProps) {
  return POINTS.map((point) => (
    <td key={point} className="num">
      {spread === null ? <Unknown /> : show(spread[point])}
    </td>
  ));
}

const chance = (probability: number) => `${sensible(probability * 100, 2)} %`;

function Means({ forecast }: { readonly forecast: Forecast }) {
  const { cleanRatio, commonRatio, ceiling, seized, smallestSet, smallestSetWhy, wrench } = forecast;
  return (
    <dl className="facts">
      <div>
        <dt>Clean joint</dt>
        <dd>
          {cleanRatio === null ? <Unknown /> : `${sensible(cleanRatio, 3)} × installed`}{' '}
          <span className="small">loosening of this joint’s own thread and friction</span>
        </dd>
      </div>
      <div>
        <dt>Common practice</dt>
        <dd>up to {sensible(commonRatio, 3)} × installed</dd>
      </div>
      <div>
        <dt>Studs expected seized</dt>
        <dd>
          {seized === null ? (
            <Unknown />
          ) : (
            <>
              {sensible(seized.expected, 2)}, between {sensible(seized.low, 2)} and {sensible(seized.high, 2)}{' '}
              <span className="small">{seized.basis}</span>
            </>
          )}
        </dd>
      </div>
      <div>
        <dt>A seized stud yields from</dt>
        <dd>
          {ceiling === null ? (
            <Unknown />
          ) : (
            <>
              <Measure si={ceiling.elastic} unit="N.m" /> in tension and twist together
              {ceiling.beyond !== null &&
                `; chance that the worst bolt asks for more ${chance(ceiling.beyond)}`}
            </>
          )}
        </dd>
      </div>
      <div>
        <dt>The chosen wrench</dt>
        <dd>
          {wrench === null ? (
            <>
              <Unknown />{' '}
              <span className="small">
                choose one with a certificate in force to see whether it is enough
              </span>
            </>
          ) : (
            <>
              up to {roundly(wrench.capacity, 'N.m')}, held by {wrench.governs}; chance that it is too small{' '}
              {wrench.tooSmall === null ? <Unknown /> : chance(wrench.tooSmall)}
            </>
          )}
        </dd>
      </div>
      <div>
        <dt>Smallest set on the register</dt>
        <dd>
          {smallestSet === null ? (
            <>none found</>
          ) : (
            <>
              {[smallestSet.drive, smallestSet.head, ...smallestSet.reducers].join(', ')}: up to{' '}
              {roundly(smallestSet.capacity, 'N.m')}
              {smallestSet.pressure !== null &&
                `, ${roundly(smallestSet.pressure, 'bar')} for the 95 % torque`}
            </>
          )}{' '}
          <span className="small">{smallestSetWhy}</span>
        </dd>
      </div>
    </dl>
  );
}
