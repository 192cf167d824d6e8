import { useId } from 'react';
import { useFormContext } from 'react-hook-form';
import { useAsk } from '../../app/ask.ts';

interface TakeSiteRowProps {
  readonly kind: 'gasket' | 'lubricant';
  /** Where the values stand in the form: "gasket", "boltSets.0.lubricant". */
  readonly under: string;
  readonly of?: string;
}

/** Copies a row of the site's table into a form, with its source: what was copied stays with the joint. */
export function TakeSiteRow({ kind, under, of = '' }: TakeSiteRowProps) {
  const id = useId();
  const { setValue } = useFormContext();
  const choices = useAsk('reference.choices', {});
  const rows = choices.data?.siteRows.filter(({ data }) => data.kind === kind) ?? [];
  if (rows.length === 0) return null;
  const take = (rowId: string) => {
    const data = rows.find((row) => row.id === rowId)?.data;
    if (data === undefined || (data.kind !== 'gasket' && data.kind !== 'lubricant')) return;
    const set = (name: string, value: string) =>
      setValue(`${under}.${name}`, value, { shouldDirty: true, shouldTouch: true });
    set(kind === 'gasket' ? 'type' : 'name', data.key);
    set('source', `${data.key}, site table: ${data.source}`);
    for (const [name, value] of Object.entries(data.values)) {
      if (value === null) set(`${name}.text`, '');
      else if (typeof value === 'string') set(name, value);
      else {
        set(`${name}.text`, value.text);
        set(`${name}.unit`, value.unit);
      }
    }
  };
  return (
    <div className="field">
      <label htmlFor={id}>
        Take the {kind}
        {of} from the site’s table
      </label>
      <select id={id} value="" onChange={(event) => take(event.target.value)}>
        <option value="">Choose a row</option>
        {rows.map((row) => (
          <option key={row.id} value={row.id}>
            {row.data.key}
          </option>
        ))}
      </select>
    </div>
  );
}
