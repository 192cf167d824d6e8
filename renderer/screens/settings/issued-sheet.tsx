import { useState } from 'react';
import { Link } from 'wouter';
import type { IssuedSetting } from '../../../core/contract/setting.ts';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk } from '../../components/desk.tsx';
import { Signatures } from '../history/signatures.tsx';
import { JointIndex } from '../joints/joint-index.tsx';
import { CardMargin } from './card-margin.tsx';
import { CardBody, CardHead, START } from './card-page.tsx';
import { RecomputeSection } from './recompute-section.tsx';
import { useWorking } from './use-working.ts';

/** An issued setting, as frozen: to be printed, and to be recorded against. */
export function IssuedSheet({ id }: { readonly id: string }) {
  const issued = useAsk('setting.get', { id });
  const { chosen, choose, working } = useWorking(issued.data?.card ?? null);
  const [place, onPlace] = useState(START);
  const reading = { chosen, onChoose: choose, place, onPlace };
  return (
    <Desk
      indexLabel="Joints"
      index={<JointIndex {...(issued.data ? { current: issued.data.card.jointId } : {})} />}
      doings={issued.data && <SheetDoings issued={issued.data} />}
      margin={
        issued.data && (
          <CardMargin card={issued.data.card} working={working} stale={false} issued>
            <RecomputeSection id={id} />
            <Signatures eventId={id} />
          </CardMargin>
        )
      }
      below={issued.data && <CardBody card={issued.data.card} issued={issued.data} {...reading} />}
    >
      <Asked asking={issued} what="the setting">
        {(setting) => <CardHead card={setting.card} issued={setting} {...reading} />}
      </Asked>
    </Desk>
  );
}

function SheetDoings({ issued }: { readonly issued: IssuedSetting }) {
  const { card } = issued;
  return (
    <>
      <Link className="act" href={`/joints/${card.jointId}/record/${card.kind}/${issued.id}`}>
        Record {card.kind}
      </Link>
      <Link className="quiet" href={`/at/${card.jointId}`}>
        At the joint
      </Link>
      <button type="button" className="quiet" onClick={() => window.print()}>
        Print this sheet
      </button>
      <Link className="quiet" href={`/joints/${card.jointId}`}>
        Joint {card.tag}
      </Link>
    </>
  );
}
