import { useState } from 'react';
import type { JointDetail } from '../../../core/contract/joint.ts';
import { describeIdentity } from '../../../core/joint/describe-identity.ts';
import { identityOf } from '../../../core/joint/identity.ts';
import { scanCode } from '../../../core/text/scan-code.ts';
import { useAskEach } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { remembered, useRemembered } from '../../app/remember.ts';
import { counted } from '../../app/text/number.ts';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { JointPicker } from '../../components/joint-picker.tsx';
import { QrCode } from '../../components/qr-code.tsx';
import { JointIndex } from '../joints/joint-index.tsx';

interface Sheet {
  readonly jointIds: readonly string[];
  /** Each tag on a page of its own size, for a label printer; otherwise many on a sheet of A4. */
  readonly single: boolean;
}

const sheetState = remembered<Sheet>('tags', { jointIds: [], single: false });

/** Tags of joints to print; a joint's own page leads here with that joint alone. */
export function TagSheet({ id }: { readonly id: string | undefined }) {
  const [sheet, setSheet] = useRemembered(sheetState);
  const [jointIds, setJointIds] = useState(() => (id === undefined ? sheet.jointIds : [id]));
  const joints = useAskEach(
    'joint.get',
    jointIds.map((each) => ({ id: each })),
  );
  const put = (next: readonly string[]) => {
    setJointIds(next);
    setSheet({ ...sheet, jointIds: next });
  };
  const failed = joints.find(({ error }) => error !== null)?.error;
  return (
    <Desk indexLabel="Joints" index={<JointIndex {...(id === undefined ? {} : { current: id })} />}>
      <div className="no-print">
        <Title
          name="Tags of joints"
          under="The tag in writing and as a code, with what helps to see that it hangs on the right joint. Print at full size, without scaling."
          kind={
            <button
              type="button"
              className="act"
              disabled={jointIds.length === 0}
              onClick={() => window.print()}
            >
              Print {counted(jointIds.length, 'tag')}
            </button>
          }
        />
        <div className="take">
          <JointPicker
            label="Add a joint"
            without={jointIds}
            onChoose={(joint) => put([...jointIds, joint])}
          />
        </div>
        <div className="filters">
          <label className="check">
            <input
              type="checkbox"
              checked={sheet.single}
              onChange={(event) => setSheet({ ...sheet, single: event.target.checked })}
            />
            Each tag on a page of its own
          </label>
          <button type="button" className="quiet" disabled={jointIds.length === 0} onClick={() => put([])}>
            Empty the sheet
          </button>
        </div>
        {failed && <Failure error={failed.error} what="A joint could not be read." />}
        {jointIds.length === 0 && <p className="empty">No joint is on the sheet.</p>}
      </div>
      <ul className={`plain-list labels size-large${sheet.single ? ' single' : ''}`}>
        {joints.map(
          ({ data }) =>
            data && (
              <li key={data.id}>
                <Tag joint={data} />
                <button
                  type="button"
                  className="link small no-print"
                  onClick={() => put(jointIds.filter((each) => each !== data.id))}
                >
                  Take off<span className="unseen"> {data.data.tag}</span>
                </button>
              </li>
            ),
        )}
      </ul>
    </Desk>
  );
}

function Tag({ joint: { data, unitName } }: { readonly joint: JointDetail }) {
  const { siteName, demo } = useRegister();
  const { valve, landmark } = describeIdentity(identityOf(data));
  return (
    <div className="tool-label joint-tag">
      <QrCode text={scanCode('J', data.tag)} label={`Code of ${data.tag}`} />
      <div className="written">
        <b>{data.tag}</b>
        <span>{unitName}</span>
        {valve && <span>{valve}</span>}
        {(landmark ?? data.location) && <span>{landmark ?? data.location}</span>}
        <span>{demo ? 'invented demo joint' : siteName}</span>
      </div>
    </div>
  );
}
