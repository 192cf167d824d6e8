import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { IssuedSetting, WorkKind } from '../../../core/contract/setting.ts';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { DialText, Measure } from '../../components/number.tsx';
import { JointIndex } from '../joints/joint-index.tsx';

interface RecordPageProps {
  readonly jointId: string;
  readonly settingId: string | null;
  readonly kind: WorkKind;
  readonly children: (joint: JointDetail, setting: IssuedSetting | null) => ReactNode;
}

/** A page on which done work is recorded: against an issued setting, or without one and then flagged. */
export function RecordPage({ jointId, settingId, kind, children }: RecordPageProps) {
  const joint = useAsk('joint.get', { id: jointId });
  const setting = useAsk('setting.get', { id: settingId ?? '' }, { enabled: settingId !== null });
  return (
    <Desk indexLabel="Joints" index={<JointIndex current={jointId} />}>
      <Asked asking={joint} what="the joint">
        {(detail) => (
          <>
            <Title
              name={`${kind === 'tightening' ? 'Tightening' : 'Breakout'} of ${detail.data.tag}`}
              beside={detail.data.location}
              under="A record is never changed once it is in the register; a correction is a new one."
              kind={setting.data ? `setting ${setting.data.number}` : 'no setting'}
            />
            {settingId === null ? (
              <>
                <Without jointId={jointId} kind={kind} />
                {children(detail, null)}
              </>
            ) : (
              <Asked asking={setting} what="the setting">
                {(issued) => (
                  <>
                    <SettingWords issued={issued} />
                    {children(detail, issued)}
                  </>
                )}
              </Asked>
            )}
          </>
        )}
      </Asked>
    </Desk>
  );
}

interface WithoutProps {
  readonly jointId: string;
  readonly kind: WorkKind;
}

/** Says what recording without a setting means, and offers the settings still waiting for their record. */
function Without({ jointId, kind }: WithoutProps) {
  const settings = useAsk('setting.list', { jointId, page: 1, pageSize: 20 });
  const waiting = (settings.data?.rows ?? []).filter((row) => row.kind === kind && !row.recorded);
  return (
    <div className="said block">
      <p>Recorded without an issued setting, and flagged so.</p>
      {waiting.map((row) => (
        <p key={row.id}>
          <Link href={`/joints/${jointId}/record/${kind}/${row.id}`}>
            Record against setting {row.number}, issued by {row.issuedBy}
          </Link>
        </p>
      ))}
    </div>
  );
}

function SettingWords({ issued }: { readonly issued: IssuedSetting }) {
  const { card } = issued;
  return (
    <p className="said block">
      Setting <Link href={`/settings/${issued.id}`}>{issued.number}</Link>
      {card.boltSet && <>, {card.boltSet.name}</>}: <Said card={card} />. Record what was really done and
      used, not what the setting said.
    </p>
  );
}

/** What the setting asked for, in the terms of its method. */
function Said({ card }: { readonly card: IssuedSetting['card'] }) {
  if (card.method === 'tensioner') {
    return (
      <>
        tension to{' '}
        <b>
          <Measure si={card.targetLoad} unit="kN" />
        </b>{' '}
        left in each stud
      </>
    );
  }
  if (card.method !== 'hydraulic wrench') {
    return (
      <>
        set <b>{card.toolSetting?.text ?? 'not known'}</b> on {card.method} {card.toolSetting?.tool},{' '}
        <Measure si={card.torque} unit="N.m" />
      </>
    );
  }
  return (
    <>
      {card.kind === 'tightening' ? 'dial' : 'begin at'}{' '}
      <b>
        <DialText dial={card.dial} />
      </b>{' '}
      on gauge {card.gauge?.number ?? 'not known'}, <Measure si={card.torque} unit="N.m" />
    </>
  );
}
