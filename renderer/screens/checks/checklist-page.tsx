import { Link } from 'wouter';
import type { ChecklistRow } from '../../../core/contract/check.ts';
import { rangeWords } from '../../../core/text/check-words.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { RoomIndex } from '../tools/room-index.tsx';
import { CheckCautions } from './check-cautions.tsx';
import { everyWords, overdueWords } from './checklist-words.ts';

/** One list as it is followed at the bench, on screen and on paper. */
export function ChecklistPage({ id }: { readonly id: string }) {
  const lists = useAsk('checklist.list', {});
  const list = lists.data?.rows.find((row) => row.id === id);
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />} doings={list && <ListDoings list={list} />}>
      <Asked asking={lists} what="the checklist">
        {() =>
          list === undefined ? (
            <Title
              name="There is no such checklist"
              under="The address names a list this book does not have."
            />
          ) : (
            <ListBody list={list} />
          )
        }
      </Asked>
    </Desk>
  );
}

function ListBody({ list: { version, data } }: { readonly list: ChecklistRow }) {
  return (
    <>
      <Title
        name={data.name}
        beside={data.kind}
        under={`For: ${data.classes.join(', ')}`}
        kind={
          <>
            {data.retired ? 'retired' : 'in use'}
            <span className="small">version {version}</span>
          </>
        }
      />
      <dl className="lines words">
        <div>
          <dt>Source</dt>
          <dd>{data.source}</dd>
        </div>
        <div>
          <dt>Asked for</dt>
          <dd>{everyWords(data)}</dd>
        </div>
        <div>
          <dt>When overdue</dt>
          <dd>{overdueWords(data)}</dd>
        </div>
      </dl>
      <div className="apart">
        <CheckCautions kind={data.kind} classes={data.classes} />
      </div>
      <section aria-label="Questions">
        <h2>Questions</h2>
        <SideScroll>
          <table className="tab">
            <thead>
              <tr>
                <th scope="col" className="num">
                  No.
                </th>
                <th scope="col">Question</th>
                <th scope="col">Answer</th>
                <th scope="col">As it should be</th>
                <th scope="col" className="only-print-cell">
                  Found
                </th>
              </tr>
            </thead>
            <tbody>
              {data.questions.map((question, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a version's questions never change place
                <tr key={at}>
                  <td className="num">{at + 1}</td>
                  <th scope="row">{question.text}</th>
                  <td>{question.answer}</td>
                  <td>
                    {question.answer === 'yes or no' ? 'yes' : rangeWords(question) || 'no range is set'}
                  </td>
                  <td className="only-print-cell">
                    <span className="tick-box" />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </SideScroll>
      </section>
      <p className="only-print small">
        Tool: ______________ &nbsp; Result: ______________ &nbsp; By: ______________________ &nbsp; Date:
        ______________
      </p>
    </>
  );
}

function ListDoings({ list }: { readonly list: ChecklistRow }) {
  const save = useWrite('checklist.save');
  const { retired, name } = list.data;
  const onRetire = () =>
    save.mutate({ id: list.id, version: list.version, data: { ...list.data, retired: !retired } });
  return (
    <>
      <Link className="act" href={`/checklists/${list.id}/edit`}>
        Edit as a new version
      </Link>
      <button type="button" className="quiet" disabled={save.isPending} onClick={onRetire}>
        {retired ? `Take ${name} back into use` : `Retire ${name}`}
      </button>
      <button type="button" className="quiet" onClick={() => window.print()}>
        Print this list
      </button>
      {save.error && <Failure error={save.error.error} what="The list was not saved." />}
    </>
  );
}
