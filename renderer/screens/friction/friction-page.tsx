import { lazy, Suspense, useDeferredValue, useId, useState } from 'react';
import { Link } from 'wouter';
import {
  type FrictionEvidence,
  type FrictionGroup,
  type FrictionReading,
  frictionGrouping,
} from '../../../core/contract/friction.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { count, roundly, sensible } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Busy } from '../../components/busy.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Unknown } from '../../components/number.tsx';
import { PointReader } from '../../components/point-reader.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';

const FrictionChart = lazy(() => import('../../charts/friction-chart.tsx'));

const ALL = { lubricant: '', batch: '', size: '', material: '' };
const WORDS = [
  ['lubricant', 'Lubricant'],
  ['batch', 'Batch'],
  ['size', 'Size of the stud'],
  ['material', 'Stud material'],
] as const;

/** Nut factors measured beside torques: what the friction of this plant really is. */
export function FrictionPage() {
  const base = useId();
  const [only, setOnly] = useState(ALL);
  const [groupBy, setGroupBy] = useState(frictionGrouping.options[0]);
  const asked = useAsk('friction.evidence', { ...useDeferredValue(only), groupBy }, { keep: true });
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title
        name="Friction"
        under="Nut factor K = T/(F·D) of every bolt whose load was measured beside its torque. Empty takes all."
      />
      <div className="filters no-print">
        <div className="field">
          <label htmlFor={`${base}-by`}>Put together by</label>
          <select
            id={`${base}-by`}
            value={groupBy}
            onChange={({ target }) => setGroupBy(frictionGrouping.parse(target.value))}
          >
            {frictionGrouping.options.map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </div>
        {WORDS.map(([name, label]) => (
          <div className="field" key={name}>
            <label htmlFor={`${base}-${name}`}>{label}</label>
            <input
              id={`${base}-${name}`}
              type="text"
              autoComplete="off"
              value={only[name]}
              onChange={({ target }) => setOnly({ ...only, [name]: target.value })}
            />
          </div>
        ))}
      </div>
      <Asked asking={asked} what="the measured friction">
        {(evidence) => <Evidence evidence={evidence} />}
      </Asked>
    </Desk>
  );
}

function Evidence({ evidence }: { readonly evidence: FrictionEvidence }) {
  const { finding, groups, readings, shown, total, leftOut } = evidence;
  return (
    <>
      <p role="status">{finding}</p>
      {groups.length > 0 && <Groups groups={groups} />}
      {readings.length > 0 && (
        <Readings key={`${total} ${readings[0]?.eventId}`} readings={readings} finding={finding}>
          {shown < total && (
            <p className="small">
              {count(shown)} of {count(total)} bolts shown; highest and lowest of each lubricant are among
              them
            </p>
          )}
        </Readings>
      )}
      {leftOut.length > 0 && <LeftOut leftOut={leftOut} />}
    </>
  );
}

const span = (ends: { readonly low: number; readonly high: number } | null, digits = 3) =>
  ends === null ? <Unknown /> : `${ends.low.toFixed(digits)} to ${ends.high.toFixed(digits)}`;

function Groups({ groups }: { readonly groups: readonly FrictionGroup[] }) {
  return (
    <section aria-labelledby="groups">
      <h2 id="groups">Number and spread</h2>
      <SideScroll>
        <table className="tab">
          <caption className="small">
            K is without a unit. Intervals are 90 %, and rest on tightenings: bolts of one share its torque.
          </caption>
          <thead>
            <tr>
              <th scope="col">Of</th>
              <th scope="col" className="num">
                Tightenings
              </th>
              <th scope="col" className="num">
                Bolts
              </th>
              <th scope="col" className="num">
                Mean K
              </th>
              <th scope="col" className="num">
                Interval of the mean
              </th>
              <th scope="col" className="num">
                Next bolt
              </th>
              <th scope="col" className="num">
                Lowest, highest
              </th>
              <th scope="col" className="num">
                Assumed
              </th>
              <th scope="col" className="num">
                Load there / promised
              </th>
              <th scope="col">What it says</th>
            </tr>
          </thead>
          <tbody>
            {groups.map((group) => (
              <tr key={group.name}>
                <th scope="row">{group.name}</th>
                <td className="num">{group.events}</td>
                <td className="num">{group.bolts}</td>
                <td className="num">{group.mean.toFixed(3)}</td>
                <td className="num">{span(group.meanInterval)}</td>
                <td className="num">{span(group.nextBolt)}</td>
                <td className="num">
                  {group.lowest.toFixed(3)}, {group.highest.toFixed(3)}
                </td>
                <td className="num">{group.assumed === null ? <Unknown /> : group.assumed.toFixed(3)}</td>
                <td className="num">
                  {group.loadShare === null ? <Unknown /> : `${sensible(group.loadShare.middle * 100, 3)} %`}
                </td>
                <td>{group.words}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </SideScroll>
    </section>
  );
}

interface ReadingsProps {
  readonly readings: readonly FrictionReading[];
  readonly finding: string;
  readonly children: React.ReactNode;
}

function Readings({ readings, finding, children }: ReadingsProps) {
  const { timeZone } = useRegister();
  const [asTable, setAsTable] = useState(false);
  const [place, setPlace] = useState(readings.length - 1);
  const chosen = readings[place];
  return (
    <section aria-labelledby="readings">
      <div className="spread">
        <h2 id="readings">Bolt by bolt</h2>
        <button type="button" className="link small no-print" onClick={() => setAsTable(!asTable)}>
          {asTable ? 'Show as chart' : 'Show as table'}
        </button>
      </div>
      {children}
      {asTable ? (
        <ReadingTable readings={readings} />
      ) : (
        <>
          <Suspense fallback={<Busy what="Drawing the chart" />}>
            <FrictionChart readings={readings} finding={finding} chosen={place} />
          </Suspense>
          {chosen && (
            <>
              <PointReader
                label="Bolt read out below"
                count={readings.length}
                place={place}
                words={`${chosen.tag}, ${moment(chosen.happenedAt, timeZone)}, bolt ${chosen.bolt}, K ${chosen.nutFactor.toFixed(3)}`}
                onPlace={setPlace}
              />
              <p aria-live="polite">
                <Link href={`/events/${chosen.eventId}`}>
                  {chosen.tag}, {moment(chosen.happenedAt, timeZone)}
                </Link>
                , bolt {chosen.bolt}: K {chosen.nutFactor.toFixed(3)} from {roundly(chosen.torque, 'N.m')} and{' '}
                {sensible(chosen.load / 1000, 4)} <span className="unit">kN</span> ({chosen.method});{' '}
                {chosen.assumed === null ? 'none was assumed' : `assumed ${chosen.assumed.toFixed(3)}`}.{' '}
                <span className="small">
                  {chosen.lubricant}, {chosen.batch}; {chosen.size}, {chosen.material}; use {chosen.studUses}{' '}
                  of the studs
                </span>
              </p>
            </>
          )}
        </>
      )}
      <ExportList
        name="measured friction"
        headings={[
          'Joint',
          'Tightened (ISO 8601)',
          'Bolt',
          'Torque, N·m',
          'Load, kN',
          'K measured',
          'K assumed',
          'Lubricant',
          'Batch',
          'Size',
          'Material',
          'Use of the studs',
          'Measured by',
        ]}
        rows={async () => readings}
        cells={(one) => [
          one.tag,
          one.happenedAt,
          one.bolt,
          one.torque,
          one.load / 1000,
          one.nutFactor,
          one.assumed,
          one.lubricant,
          one.batch,
          one.size,
          one.material,
          one.studUses,
          one.method,
        ]}
      />
    </section>
  );
}

function ReadingTable({ readings }: { readonly readings: readonly FrictionReading[] }) {
  const { timeZone } = useRegister();
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col">Joint</th>
            <th scope="col">Tightened</th>
            <th scope="col" className="num">
              Bolt
            </th>
            <th scope="col" className="num">
              Torque <span className="unit">N·m</span>
            </th>
            <th scope="col" className="num">
              Load <span className="unit">kN</span>
            </th>
            <th scope="col" className="num">
              K measured
            </th>
            <th scope="col" className="num">
              K assumed
            </th>
            <th scope="col">Lubricant, batch</th>
            <th scope="col">Stud</th>
          </tr>
        </thead>
        <tbody>
          {readings.map((one) => (
            <tr key={`${one.eventId} ${one.bolt}`}>
              <th scope="row">
                <Link href={`/joints/${one.jointId}`}>{one.tag}</Link>
              </th>
              <td className="date">{moment(one.happenedAt, timeZone)}</td>
              <td className="num">{one.bolt}</td>
              <td className="num">{sensible(one.torque, 4)}</td>
              <td className="num">{sensible(one.load / 1000, 4)}</td>
              <td className="num">{one.nutFactor.toFixed(3)}</td>
              <td className="num">{one.assumed === null ? <Unknown /> : one.assumed.toFixed(3)}</td>
              <td>
                {one.lubricant}, {one.batch}
              </td>
              <td>
                {one.size}, {one.material}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

function LeftOut({ leftOut }: { readonly leftOut: FrictionEvidence['leftOut'] }) {
  const { timeZone } = useRegister();
  return (
    <section aria-labelledby="left-out">
      <h2 id="left-out">Measured, and no use for this</h2>
      <ul className="plain-list">
        {leftOut.map(({ eventId, tag, happenedAt, why }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: one tightening may be named for several bolts
          <li key={`${eventId} ${index}`}>
            <Link href={`/events/${eventId}`}>
              {tag}, {moment(happenedAt, timeZone)}
            </Link>
            : {why}
          </li>
        ))}
      </ul>
    </section>
  );
}
