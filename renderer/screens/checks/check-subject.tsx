import { useWatch } from 'react-hook-form';
import { Link } from 'wouter';
import { type ChecklistRow, checkKind } from '../../../core/contract/check.ts';
import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { Choice, same } from '../../components/fields.tsx';
import { comparedOf, WITHOUT_LIST } from './check-form-values.ts';

interface CheckSubjectProps {
  readonly tool: ToolRecord;
  readonly lists: readonly ChecklistRow[];
  readonly list: ChecklistRow | null;
}

/** Which list is followed; where the site has none for it, only the kind is named. */
export function CheckSubject({ tool, lists, list }: CheckSubjectProps) {
  const listId: string = useWatch({ name: 'listId' });
  const { class: toolClass } = tool.data.properties;
  const kinds = checkKind.options.filter(
    (kind) =>
      (kind !== 'comparison' || comparedOf(tool.data) !== null) &&
      (kind !== 'zero of the gauge' || toolClass === 'gauge'),
  );
  return (
    <fieldset>
      <legend>What is checked</legend>
      <div className="fields">
        <Choice
          name="listId"
          label="Checklist"
          blank="Choose the list"
          options={[
            ...lists.map(({ id, data }) => ({
              value: id,
              words: `${data.name}${dueWords(tool, data.name)}`,
            })),
            { value: WITHOUT_LIST, words: 'without a list' },
          ]}
        />
        {listId === WITHOUT_LIST && (
          <Choice name="kind" label="Kind of check" blank="Choose the kind" options={same(kinds)} />
        )}
      </div>
      {list !== null && (
        <p className="small after">
          {list.data.kind === list.data.name.toLowerCase() ? '' : `A ${list.data.kind}. `}
          Version {list.version} of the list, from: {list.data.source}.{' '}
          <Link href={`/checklists/${list.id}`}>See the list</Link>
        </p>
      )}
      {lists.length === 0 && (
        <p className="small after">
          The site has no list for a {toolClass}. <Link href="/checklists/new">Enter one</Link> from the
          tool’s own instructions, or check without a list.
        </p>
      )}
    </fieldset>
  );
}

/** Lists that are due say so where one is chosen. */
function dueWords(tool: ToolRecord, name: string): string {
  const due = tool.due.find(({ what }) => what === name);
  return due === undefined || due.state === 'in date' ? '' : `, ${due.state}`;
}
