import { Link, useLocation } from 'wouter';
import type { KitRow } from '../../../core/contract/custody.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { counted } from '../../app/text/number.ts';
import { day, span } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { DueShape } from '../../components/due-mark.tsx';
import { Failure } from '../../components/failure.tsx';
import { SeverityMark } from '../../components/marks.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { layOnDesk } from '../custody/desk-state.ts';
import { RoomIndex } from '../tools/room-index.tsx';

export function KitPage({ id }: { readonly id: string }) {
  const kit = useAsk('kit.get', { id });
  return (
    <Desk
      indexLabel="Tool room"
      index={<RoomIndex />}
      doings={kit.data && <KitDoings kit={kit.data} />}
      margin={kit.data && <KitMargin kit={kit.data} />}
    >
      <Asked asking={kit} what="the kit">
        {(row) => <KitBody kit={row} />}
      </Asked>
    </Desk>
  );
}

function KitBody({ kit }: { readonly kit: KitRow }) {
  const { data } = kit;
  return (
    <>
      <Title
        name={data.name}
        beside="kit"
        under={data.reference}
        kind={
          <>
            {span(data.from, data.to)}
            <span className="small">
              {data.closed ? 'closed' : 'open'}, version {kit.version}
            </span>
          </>
        }
      />
      {kit.tools.length === 0 ? (
        <p className="empty">No tool is in this kit yet. Edit the kit to add some.</p>
      ) : (
        <KitTools kit={kit} />
      )}
      {kit.joints.length > 0 && (
        <section>
          <h2>Joints of the job</h2>
          <p className="row">
            {kit.joints.map(({ id, tag }) => (
              <Link key={id} href={`/joints/${id}`}>
                {tag}
              </Link>
            ))}
          </p>
        </section>
      )}
      {data.remarks && (
        <section>
          <h2>Remarks</h2>
          <p>{data.remarks}</p>
        </section>
      )}
      <p className="only-print small">
        Handed over: ______________________ &nbsp; Taken: ______________________ &nbsp; Date: ______________
      </p>
      <p className="exports no-print">
        <button type="button" className="link small" onClick={() => window.print()}>
          Print the kit list
        </button>
      </p>
    </>
  );
}

function KitTools({ kit }: { readonly kit: KitRow }) {
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col" className="only-print-cell">
              Taken
            </th>
            <th scope="col">Class</th>
            <th scope="col">Tool</th>
            <th scope="col">Rating</th>
            <th scope="col">Place</th>
            <th scope="col">Status</th>
            <th scope="col">Stands against it</th>
          </tr>
        </thead>
        <tbody>
          {kit.tools.map((tool) => (
            <tr key={tool.id}>
              <td className="only-print-cell">
                <span className="tick-box" />
              </td>
              <td>{tool.class}</td>
              <th scope="row" className="tool-number">
                <Link href={`/tools/${tool.id}`}>{tool.number}</Link>
              </th>
              <td>{tool.ratings}</td>
              <td>{tool.place}</td>
              <td>
                {tool.status}
                {tool.holder && <div className="small">with {tool.holder}</div>}
              </td>
              <td>
                <ToolAgainst kit={kit} tool={tool} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

function ToolAgainst({ kit, tool }: { readonly kit: KitRow; readonly tool: KitRow['tools'][number] }) {
  const clashes = kit.data.closed ? [] : kit.clashes.filter(({ number }) => number === tool.number);
  const barred = tool.status === 'quarantined' || tool.status === 'scrapped';
  if (!barred && tool.due.length === 0 && clashes.length === 0)
    return <span className="small">nothing known</span>;
  return (
    <ul className="plain-list against">
      {barred && (
        <li className="bars">
          <SeverityMark severity="refusal" />
          <span>It is {tool.status} and can not be issued.</span>
        </li>
      )}
      {tool.due.map((due) => (
        <li key={due}>
          <DueShape state="due before it is needed" />
          <span>{due}</span>
        </li>
      ))}
      {clashes.map((clash) => (
        <li key={clash.kit}>
          <SeverityMark severity="warning" />
          <span>
            Also in {clash.kit}, {span(clash.from, clash.to)}.
          </span>
        </li>
      ))}
    </ul>
  );
}

/** Issuing and taking back go over the desk, where the tools are looked at one by one. */
function KitDoings({ kit }: { readonly kit: KitRow }) {
  const [, goTo] = useLocation();
  const toDesk = (step: 'issue' | 'return') => {
    const status = step === 'issue' ? 'available' : 'issued';
    const tools = kit.tools.filter((tool) => step === 'issue' || tool.status === status);
    layOnDesk(
      tools.map(({ id, number }) => ({ id, number })),
      {
        step,
        reference: kit.data.reference,
        kit: step === 'issue' ? { id: kit.id, name: kit.data.name } : null,
      },
    );
    goTo('/custody');
  };
  const issued = kit.tools.filter(({ status }) => status === 'issued');
  return (
    <>
      {!kit.data.closed && (
        <button
          type="button"
          className="act"
          disabled={kit.tools.length === 0}
          onClick={() => toDesk('issue')}
        >
          Issue the kit
        </button>
      )}
      <button type="button" className="quiet" disabled={issued.length === 0} onClick={() => toDesk('return')}>
        Take the kit back
      </button>
      <Link className="quiet" href={`/kits/${kit.id}/edit`}>
        Edit the kit
      </Link>
      <CloseKit kit={kit} />
    </>
  );
}

function CloseKit({ kit }: { readonly kit: KitRow }) {
  const save = useWrite('kit.save');
  const { closed } = kit.data;
  const onClick = () =>
    save.mutate({ id: kit.id, version: kit.version, data: { ...kit.data, closed: !closed } });
  return (
    <>
      <button type="button" className="quiet" disabled={save.isPending} onClick={onClick}>
        {closed ? 'Open the kit again' : 'Close the kit'}
      </button>
      {save.error && <Failure error={save.error.error} what="The kit was not saved." />}
    </>
  );
}

function KitMargin({ kit }: { readonly kit: KitRow }) {
  const out = kit.tools.filter(({ status }) => status === 'issued');
  return (
    <>
      <section>
        <h2>The kit today</h2>
        <p>
          {counted(kit.tools.length, 'tool')}, {out.length} issued.{' '}
          {kit.data.closed
            ? 'Closed: its tools are free for other jobs.'
            : `Open: its tools are reserved from ${day(kit.data.from)} to ${day(kit.data.to)}.`}
        </p>
      </section>
      <section>
        <h2>Reserved</h2>
        <p className="small">
          On its days a tool goes out with its kit only. One that is in two kits on the same days, or due
          before the kit’s last day, is named beside it. What a setting may use is decided when it is worked
          out.
        </p>
      </section>
    </>
  );
}
