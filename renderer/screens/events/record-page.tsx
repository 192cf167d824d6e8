import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { IssuedSetting } from '../../../core/contract/setting.ts';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { DialText, Measure } from '../../components/number.tsx';
import { JointIndex } from '../joints/joint-index.tsx';

interface RecordPageProps {
  readonly jointId: string;
  readonly settingId: string | null;
  readonly heading: string;
  readonly children: (joint: JointDetail, setting: IssuedSetting | null) => ReactNode;
}

/** A page on which done work is recorded: against an issued setting, or without one and then flagged. */
export function RecordPage({ jointId, settingId, heading, children }: RecordPageProps) {
  const joint = useAsk('joint.get', { id: jointId });
  const setting = useAsk('setting.get', { id: settingId ?? '' }, { enabled: settingId !== null });
  return (
    <Desk indexLabel="Joints" index={<JointIndex current={jointId} />}>
      <Asked asking={joint} what="the joint">
        {(detail) => (
          <>
            <Title
              name={`${heading} of ${detail.data.tag}`}
              beside={detail.data.location}
              under="A record is never changed once it is in the register; a correction is a new one."
              kind={setting.data ? `setting ${setting.data.number}` : 'no setting'}
            />
            {settingId === null ? (
              <>
                <Without jointId={jointId} />
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

function Without({ jointId }: { readonly jointId: string }) {
  const settings = useAsk('setting.list', { jointId, page: 1, pageSize: 5 });
  return (
    <p className="said block">
      Recorded without an issued setting, and flagged so.
      {(settings.data?.rows ?? []).map((row) => (
        <span key={row.id}>
          {' '}
          <Link href={`/joints/${jointId}/record/${row.kind}/${row.id}`}>
            Record {row.kind} against setting {row.number}
          </Link>
          .
        </span>
      ))}
    </p>
  );
}

function SettingWords({ issued }: { readonly issued: IssuedSetting }) {
  const { card } = issued;
  return (
    <p className="said block">
      Setting <Link href={`/settings/${issued.id}`}>{issued.number}</Link>:{' '}
      {card.kind === 'tightening' ? 'dial' : 'begin at'}{' '}
      <b>
        <DialText dial={card.dial} />
      </b>{' '}
      on gauge {card.gauge?.number ?? 'not known'}, <Measure si={card.torque} unit="N.m" />. Record what was
      really done and used, not what the setting said.
    </p>
  );
}
