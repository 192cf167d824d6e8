import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { UNITS } from '../../../core/units/units.ts';
import { day } from '../../app/text/time.ts';
import { Unknown } from '../../components/number.tsx';
import { toolLines } from './tool-lines.ts';

/** Which tool it is, whose, where it is, what it may stand and what it fits. */
export function RecordIdentity({ tool }: { readonly tool: ToolRecord }) {
  const { data } = tool;
  const lines: readonly (readonly [string, string | null])[] = [
    ['Serial number', data.serial || null],
    ['Owner', ownerWords(data.owner)],
    ['Status', data.status],
    ['Holder', tool.holder ?? 'nobody'],
    ['Place', data.place || null],
    ['Mass', data.weight && `${data.weight.text} ${UNITS[data.weight.unit].label}`],
  ];
  return (
    <>
      <div className="pair">
        <Lines lines={lines} />
        <Lines lines={toolLines(data)} />
      </div>
      {data.remarks && <p className="small after">{data.remarks}</p>}
    </>
  );
}

function Lines({ lines }: { readonly lines: readonly (readonly [string, string | null])[] }) {
  return (
    <dl className="lines">
      {lines.map(([name, text]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{text ?? <Unknown />}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Tools stored before owners were asked for are the site's own. */
export function ownerWords(owner: ToolRecord['data']['owner'] | undefined): string {
  if (owner === undefined || owner.kind === 'own') return 'the site';
  return `hired from ${owner.from}${owner.returnBy === null ? '' : `, back by ${day(owner.returnBy)}`}`;
}
