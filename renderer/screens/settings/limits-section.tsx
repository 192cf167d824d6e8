import type { LimitRow } from '../../../core/contract/card-views.ts';
import { counted } from '../../app/text/number.ts';
import { Plain } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { CardNumber } from './card-number.tsx';
import { CardSection, type SectionProps } from './card-section.tsx';
import { LimitState } from './limit-state.tsx';

/** What the limits come to, in one line: what is not met first, then what is not known. */
export function limitsFinding(limits: readonly LimitRow[]): string {
  const of = (state: LimitRow['state']) => limits.filter((row) => row.state === state).length;
  return [
    of('not met') > 0 && `${of('not met')} not met`,
    of('not known') > 0 && `${of('not known')} not known`,
    of('met') > 0 && `${counted(of('met'), 'pass').replace(/passs$/, 'passes')}`,
  ]
    .filter(Boolean)
    .join(', ');
}

export function LimitsSection({ card, chosen, onChoose }: SectionProps) {
  if (card.limits.length === 0) return null;
  return (
    <CardSection title="Limits" finding={limitsFinding(card.limits)}>
      <SideScroll>
        <table className="tab wide-first">
          <thead>
            <tr>
              <th scope="col">Limit</th>
              <th scope="col">Pressure case</th>
              <th scope="col" className="num">
                Bolt stress <span className="unit">MPa</span>
              </th>
              <th scope="col" className="num">
                Limit <span className="unit">MPa</span>
              </th>
              <th scope="col">State</th>
            </tr>
          </thead>
          <tbody>
            {card.limits.map((row) => (
              <tr key={`${row.name} ${row.case} ${row.gasket} ${row.side}`}>
                <th scope="row">
                  {row.name}
                  <div className="small">
                    {[row.gasket, `${row.area} area`, row.source].filter(Boolean).join(' · ')}
                  </div>
                </th>
                <td>{row.case ?? 'every'}</td>
                <td className="num">
                  <Plain si={row.value} unit="MPa" />
                </td>
                <td className="num">
                  {row.side}{' '}
                  <CardNumber
                    card={card}
                    of="limit"
                    about={[row.name, row.case ?? '', row.gasket ?? '']}
                    chosen={chosen}
                    onChoose={onChoose}
                  >
                    <Plain si={row.limit} unit="MPa" />
                  </CardNumber>
                </td>
                <td>
                  <LimitState state={row.state} side={row.side} />
                  {row.needs.length > 0 && <Needs needs={row.needs} />}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </SideScroll>
    </CardSection>
  );
}

function Needs({ needs }: { readonly needs: readonly string[] }) {
  return (
    <details className="small takes">
      <summary>It takes {counted(needs.length, 'value')}</summary>
      <ul className="reasons">
        {needs.map((need) => (
          <li key={need}>{need}</li>
        ))}
      </ul>
    </details>
  );
}
