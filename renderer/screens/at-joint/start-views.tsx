import type { JointDetail } from '../../../core/contract/joint.ts';
import type { RunView } from '../../../core/contract/pass.ts';
import type { IssuedSetting, SettingSummary, WorkKind } from '../../../core/contract/setting.ts';
import { describeIdentity } from '../../../core/joint/describe-identity.ts';
import { identityOf } from '../../../core/joint/identity.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { counted, exact, unitLabel } from '../../app/text/number.ts';
import { moment, span } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Key, Step, StepCautions } from './parts.tsx';
import { CrewKeys } from './people.tsx';

interface SettingChoiceProps {
  readonly jointId: string;
  readonly settings: readonly SettingSummary[];
  readonly onChoose: (setting: SettingSummary) => void;
  readonly onLeave: (to: string) => void;
}

/** Issued settings that wait for their record. One that was refused or never issued is not among them. */
export function SettingChoice({ jointId, settings, onChoose, onLeave }: SettingChoiceProps) {
  const { today } = useRegister();
  return (
    <Step
      asks={settings.length === 0 ? 'There is no setting to work by' : 'Which setting is worked by'}
      keys={
        <>
          {settings.length === 0 && (
            <Key main onClick={() => onLeave(`/joints/${jointId}/setting`)}>
              Work out a setting
            </Key>
          )}
          <Key onClick={() => onLeave(`/joints/${jointId}/record/tightening`)}>
            Record a tightening done without one
          </Key>
          <Key onClick={() => onLeave(`/joints/${jointId}/record/breakout`)}>
            Record a breakout done without one
          </Key>
          <Key onClick={() => onLeave(`/joints/${jointId}`)}>To the page of the joint</Key>
        </>
      }
    >
      {settings.length === 0 && (
        <p className="at-said">
          No setting has been issued for this joint that is still to be recorded. Without one there is no
          number to set. What was done all the same can be recorded.
        </p>
      )}
      <div className="keys list">
        {settings.map((setting) => (
          <Key key={setting.id} onClick={() => onChoose(setting)}>
            <b>
              {setting.number}, {WORK[setting.kind]}
              {setting.dial && (
                <>
                  {' '}
                  {exact(setting.dial.value)} {unitLabel(setting.dial.unit)}
                </>
              )}
            </b>
            <span>
              for {span(setting.startsOn, setting.endsOn)}
              {(today < setting.startsOn || today > setting.endsOn) && ', not for today'}; issued by{' '}
              {setting.issuedBy}
              {setting.overrides > 0 && `, against ${counted(setting.overrides, 'refusal')} overridden`}
            </span>
          </Key>
        ))}
      </div>
    </Step>
  );
}

const WORK: Record<WorkKind, string> = { tightening: 'tighten to', breakout: 'loosen, begin at' };

interface CrewViewProps {
  readonly crew: readonly string[];
  readonly run: RunView | null;
  readonly onToggle: (id: string) => void;
  readonly onKnown: () => void;
  readonly onBeginAgain: (() => void) | null;
}

/** Who works now; before that, what the crew before them left. */
export function CrewView({ crew, run, onToggle, onKnown, onBeginAgain }: CrewViewProps) {
  const handed = run !== null && run.stints.length > 0;
  return (
    <Step
      asks={handed ? 'Who goes on with this joint' : 'Who is at the joint'}
      keys={
        <>
          <Key main disabled={crew.length === 0} onClick={onKnown}>
            {crew.length === 0 ? 'Choose everybody in the crew' : 'This is the crew'}
          </Key>
          {handed && onBeginAgain && <Key onClick={onBeginAgain}>Begin again from the first pass</Key>}
        </>
      }
    >
      {handed && <Handover run={run} />}
      <CrewKeys chosen={crew} onToggle={onToggle} />
    </Step>
  );
}

/** Where the crew before left off: who, when, why, what is done and what comes next. */
export function Handover({ run }: { readonly run: RunView }) {
  const { timeZone } = useRegister();
  const { stints, standing, of } = run;
  const last = stints.at(-1);
  if (last === undefined) return null;
  const finished = standing?.finishedPasses ?? [];
  const names = finished.flatMap((pass) => stints.find((stint) => stint.pass === pass)?.name ?? []);
  const stop = last.stoppedBecause;
  return (
    <dl className="at-handover" aria-label="What the crew before left">
      <div>
        <dt>Crew before</dt>
        <dd>
          {last.people.join(' and ')}, {moment(last.endedAt, timeZone)}
        </dd>
      </div>
      <div>
        <dt>Stopped</dt>
        <dd>{stop === null ? 'between two passes' : [stop.reason, stop.words].filter(Boolean).join(': ')}</dd>
      </div>
      <div>
        <dt>Passes done</dt>
        <dd>{names.length === 0 ? `none of ${of}` : `${names.join(', ')}; ${names.length} of ${of}`}</dd>
      </div>
      {standing?.state === 'go on' && (
        <div>
          <dt>{standing.passName}</dt>
          <dd>
            {standing.done.length} of {standing.done.length + standing.remaining.length} bolts
            {run.lastBolt !== null && `, last bolt ${run.lastBolt}`}; next {standing.next.join(' and ')}
          </dd>
        </div>
      )}
      {standing !== null && standing.leftOut.length > 0 && (
        <div>
          <dt>Left out</dt>
          <dd>bolt {standing.leftOut.join(', ')}</dd>
        </div>
      )}
    </dl>
  );
}

interface JointViewProps {
  readonly joint: JointDetail;
  readonly kind: WorkKind;
  readonly onRead: () => void;
  readonly onOther: () => void;
}

/** The tag is read from the joint itself, whatever led to this view. */
export function JointView({ joint, kind, onRead, onOther }: JointViewProps) {
  const { data, unitName } = joint;
  const { valve, landmark } = describeIdentity(identityOf(data));
  return (
    <Step
      asks="Is this the joint"
      keys={
        <>
          <Key main onClick={onRead}>
            The tag on the joint reads {data.tag}
          </Key>
          <Key onClick={onOther}>It reads something else</Key>
        </>
      }
    >
      <StepCautions kind={kind} step="joint" />
      <p className="at-tag">{data.tag}</p>
      <p className="at-said">{[unitName, data.location, data.service].filter(Boolean).join(' · ')}</p>
      <p className="at-said">{[landmark, valve].filter(Boolean).join(' · ')}</p>
      <LookAlikes id={joint.id} />
    </Step>
  );
}

/** As many as are taken in at a glance; they come the likeliest first. */
const LOOK_ALIKES = 3;

/** Joints this one could be taken for, with what tells them apart. */
function LookAlikes({ id }: { readonly id: string }) {
  const asked = useAsk('joint.lookAlikes', { id });
  return (
    <Asked asking={asked} what="look-alikes">
      {({ rows }) =>
        rows.length > 0 && (
          <section aria-labelledby="look-alikes">
            <h3 id="look-alikes">It could be taken for</h3>
            <ul className="at-list">
              {rows.slice(0, LOOK_ALIKES).map(({ id: other, tag, reasons, tells, oneIsLive }) => (
                <li key={other}>
                  <b>{tag}</b>: {(tells.length > 0 ? tells : reasons.slice(0, 1)).join('; ')}
                  {oneIsLive && <span className="at-flag">one of the two is isolated, the other is not</span>}
                </li>
              ))}
            </ul>
          </section>
        )
      }
    </Asked>
  );
}

interface ToolsViewProps {
  readonly kind: WorkKind;
  readonly tools: readonly string[];
  readonly overrides: IssuedSetting['overrides'];
  readonly onLookedOver: () => void;
}

export function ToolsView({ kind, tools, overrides, onLookedOver }: ToolsViewProps) {
  return (
    <Step
      asks="Before the tool is used"
      keys={
        <Key main onClick={onLookedOver}>
          Looked over and agreed
        </Key>
      }
    >
      <StepCautions kind={kind} step="tools" />
      {overrides.map(({ code, findings, reason }) => (
        <p className="at-said" key={code}>
          <span className="at-flag">Issued against a refusal: {findings[0]?.title ?? code}</span>
          {findings[0]?.detail} Overridden because: {reason}
        </p>
      ))}
      <p className="at-said">
        {tools.length === 0 ? 'The setting names no tools.' : `The setting is for ${tools.join(', ')}.`}
      </p>
    </Step>
  );
}

interface ResumeProps {
  readonly where: string;
  readonly crew: string;
  readonly savedAt: string;
  readonly onSame: () => void;
  readonly onOther: () => void;
}

/** After a reload or a crash: what is kept, and whether the same people go on. */
export function ResumeView({ where, crew, savedAt, onSame, onOther }: ResumeProps) {
  const { timeZone } = useRegister();
  return (
    <Step
      asks="Work in progress is kept here"
      keys={
        <>
          <Key main onClick={onSame}>
            Go on as {crew}
          </Key>
          <Key onClick={onOther}>Another crew takes over</Key>
        </>
      }
    >
      <p className="at-said">
        {where}. Kept {moment(savedAt, timeZone)}, {crew}.
      </p>
    </Step>
  );
}
