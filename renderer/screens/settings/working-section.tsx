import type { SettingCard, Working, WorkingInput } from '../../../core/contract/setting.ts';
import { fromSI } from '../../../core/units/units.ts';
import { exact, full, unitLabel } from '../../app/text/number.ts';
import { ORIGIN_WORDS, Unknown } from '../../components/number.tsx';

interface WorkingSectionProps {
  readonly working: Working;
  readonly card: SettingCard;
  /** Where several workings stand on one page. */
  readonly id?: string;
}

/** How one number came about: relation, inputs with unit and origin, source. */
export function WorkingSection({ working, card, id = 'working' }: WorkingSectionProps) {
  return (
    <section className="working" aria-labelledby={id}>
      <h2 id={id}>
        Working{' '}
        <span className="small">
          of{' '}
          {working.of === 'dial' && card.dial
            ? `${exact(card.dial.value)} ${unitLabel(card.dial.unit)}`
            : working.title}
        </span>
      </h2>
      <p className="relation">{working.relation}</p>
      <table>
        <tbody>
          {working.inputs.map((input) => (
            <Row key={`${input.symbol} ${input.name}`} input={input} />
          ))}
          <Row input={working.result} result />
        </tbody>
      </table>
      <p className="faint">{working.source}</p>
    </section>
  );
}

function Row({ input, result }: { readonly input: WorkingInput; readonly result?: boolean }) {
  return (
    <tr className={result ? 'result' : undefined}>
      <td className="symbol">{input.symbol}</td>
      <th scope="row" className="from">
        {input.name}
        <span className="origin-mark">
          {ORIGIN_WORDS[input.origin]}
          {input.source && `: ${input.source}`}
        </span>
      </th>
      <td className={input.text === null ? 'num' : 'num words'}>
        <span className={input.origin === 'assumed' ? 'assumed' : undefined}>
          <InputValue input={input} />
        </span>
      </td>
    </tr>
  );
}

function InputValue({ input }: { readonly input: WorkingInput }) {
  if (input.text !== null) return <>{input.text}</>;
  if (input.si === null) return <Unknown />;
  if (input.unit === null) return <>{full(input.si)}</>;
  return (
    <>
      {full(fromSI(input.si, input.unit))} <span className="unit">{unitLabel(input.unit)}</span>
    </>
  );
}
