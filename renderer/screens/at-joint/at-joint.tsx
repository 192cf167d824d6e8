import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { OpenPasses } from '../../../core/contract/pass.ts';
import type { IssuedSetting, SettingSummary, WorkKind } from '../../../core/contract/setting.ts';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { completed } from '../../components/draft.ts';
import { type BreakoutDraft, freshBreakout } from './breakout-draft.ts';
import { BreakoutWork } from './breakout-work.tsx';
import { AtShell } from './parts.tsx';
import { SettingChoice } from './start-views.tsx';
import { freshTightening, type TighteningDraft } from './tightening-draft.ts';
import { TighteningWork } from './tightening-work.tsx';

/** Work at one joint: what is in progress goes on, else a setting is chosen. */
export function AtJoint({ id }: { readonly id: string }) {
  const client = useQueryClient();
  const [times, setTimes] = useState(0);
  const takeUp = async () => {
    await client.invalidateQueries();
    setTimes((before) => before + 1);
  };
  return <AsItStands key={times} id={id} onTakeUp={takeUp} />;
}

interface AsItStandsProps {
  readonly id: string;
  /** Begins anew with what the register holds, where another window has gone on. */
  readonly onTakeUp: () => void;
}

function AsItStands({ id, onTakeUp }: AsItStandsProps) {
  const joint = useAsk('joint.get', { id }, { fresh: true });
  const settings = useAsk('setting.list', { jointId: id, page: 1, pageSize: 50 }, { fresh: true });
  const open = useAsk('pass.open', { jointId: id }, { fresh: true });
  const tightening = useDraftAtStart('tightening at the joint', id);
  const breakout = useDraftAtStart('breakout at the joint', id);
  const parts = [joint, settings, open, tightening, breakout];
  const error = parts.find((part) => part.error)?.error ?? null;
  if (
    joint.data === undefined ||
    settings.data === undefined ||
    open.data === undefined ||
    tightening.data === undefined ||
    breakout.data === undefined
  ) {
    return (
      <AtShell title="At the joint">
        <Asked asking={{ data: undefined, error }} what="the joint">
          {() => null}
        </Asked>
      </AtShell>
    );
  }
  return (
    <Work
      joint={joint.data}
      settings={settings.data.rows}
      open={open.data}
      tightening={tightening.data.draft}
      breakout={breakout.data.draft}
      onTakeUp={onTakeUp}
    />
  );
}

/** Asked anew whenever the page is opened: another window or crew may have gone on since. */
function useDraftAtStart(kind: 'tightening at the joint' | 'breakout at the joint', subjectId: string) {
  return useAsk('draft.get', { kind, subjectId }, { fresh: true });
}

interface Kept {
  readonly data: string;
  readonly version: number;
  readonly savedAt: string;
}

interface WorkProps {
  readonly joint: JointDetail;
  readonly settings: readonly SettingSummary[];
  readonly open: OpenPasses;
  readonly tightening: Kept | null;
  readonly breakout: Kept | null;
  readonly onTakeUp: () => void;
}

interface Begun {
  readonly kind: WorkKind;
  readonly settingId: string;
  readonly tightening: TighteningDraft | null;
  readonly breakout: BreakoutDraft | null;
  readonly version: number | null;
  readonly keptAt: string | null;
}

function Work(props: WorkProps) {
  const { joint, settings } = props;
  const [, goTo] = useLocation();
  const [begun, setBegun] = useState(() => begunOf(props));
  if (begun === null) {
    return (
      <AtShell title={joint.data.tag} beside={joint.data.location}>
        <SettingChoice
          jointId={joint.id}
          settings={settings.filter(({ recorded }) => !recorded)}
          onChoose={({ id: settingId, kind }) => setBegun(begin(kind, settingId, crypto.randomUUID()))}
          onLeave={goTo}
        />
      </AtShell>
    );
  }
  return (
    <Setting
      key={`${begun.settingId} ${begun.tightening?.runId}`}
      joint={joint}
      begun={begun}
      onBeginAgain={() => setBegun(null)}
      onTakeUp={props.onTakeUp}
    />
  );
}

function begin(kind: WorkKind, settingId: string, runId: string): Begun {
  return {
    kind,
    settingId,
    tightening: kind === 'tightening' ? freshTightening(runId, settingId) : null,
    breakout: kind === 'breakout' ? freshBreakout(settingId) : null,
    version: null,
    keptAt: null,
  };
}

/** A draft goes before what the register alone says, because it is the newer of the two. */
function begunOf({ tightening, breakout, open }: WorkProps): Begun | null {
  if (tightening !== null) {
    const draft = completed<TighteningDraft>(JSON.parse(tightening.data), freshTightening('', ''));
    return {
      ...begin('tightening', draft.settingId, draft.runId),
      tightening: draft,
      version: tightening.version,
      keptAt: tightening.savedAt,
    };
  }
  if (breakout !== null) {
    const draft = completed<BreakoutDraft>(JSON.parse(breakout.data), freshBreakout(''));
    return {
      ...begin('breakout', draft.settingId, ''),
      breakout: draft,
      version: breakout.version,
      keptAt: breakout.savedAt,
    };
  }
  const { run } = open;
  return run === null || run.settingId === null ? null : begin('tightening', run.settingId, run.runId);
}

interface SettingProps {
  readonly joint: JointDetail;
  readonly begun: Begun;
  readonly onBeginAgain: () => void;
  readonly onTakeUp: () => void;
}

function Setting(props: SettingProps) {
  const { joint, begun } = props;
  const issued = useAsk('setting.get', { id: begun.settingId });
  const open = useAsk('pass.open', { jointId: joint.id, settingId: begun.settingId }, { fresh: true });
  if (issued.data === undefined || open.data === undefined) {
    return (
      <AtShell title={joint.data.tag} beside={joint.data.location}>
        <Asked asking={{ data: undefined, error: issued.error ?? open.error }} what="the setting">
          {() => null}
        </Asked>
      </AtShell>
    );
  }
  return <Doing {...props} issued={issued.data} open={open.data} />;
}

interface DoingProps extends SettingProps {
  readonly issued: IssuedSetting;
  readonly open: OpenPasses;
}

function Doing({ joint, issued, open, begun, onBeginAgain, onTakeUp }: DoingProps) {
  const { tightening, breakout, version, keptAt } = begun;
  const about = { joint, issued, keptAt, onTakeUp };
  if (tightening !== null) {
    return (
      <TighteningWork
        {...about}
        open={open}
        start={{ value: tightening, version }}
        onBeginAgain={onBeginAgain}
      />
    );
  }
  return breakout && <BreakoutWork {...about} start={{ value: breakout, version }} />;
}
