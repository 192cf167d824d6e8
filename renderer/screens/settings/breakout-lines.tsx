import type { BreakoutView, SettingCard } from '../../../core/contract/setting.ts';
import type { Unit } from '../../../core/units/units.ts';
import { sensible } from '../../app/text/number.ts';
import { DialText, Measure, Origin } from '../../components/number.tsx';
import { CardNumber, type Choosing } from './card-number.tsx';
import type { NumberName } from './use-working.ts';

interface BreakoutLinesProps extends Choosing {
  readonly card: SettingCard;
  readonly breakout: BreakoutView;
}

/** How hard it may break out, what the set can give, and what the stud itself stands. */
export function BreakoutLines({ card, breakout, chosen, onChoose }: BreakoutLinesProps) {
  const line = (name: string, si: number | null, of: NumberName | null, unit: Unit = 'N.m') => (
    <div>
      <dt>{name}</dt>
      <dd>
        {of === null ? (
          <Measure si={si} unit={unit} />
        ) : (
          <CardNumber card={card} of={of} chosen={chosen} onChoose={onChoose}>
            <Measure si={si} unit={unit} />
          </CardNumber>
        )}
      </dd>
    </div>
  );
  return (
    <section aria-labelledby="breakout">
      <h2 id="breakout">Breakout</h2>
      <dl className="lines narrow">
        <div>
          <dt>Never above, on the gauge</dt>
          <dd>
            <DialText dial={breakout.never} />
          </dd>
        </div>
        {line('Installed torque', breakout.installedTorque, null)}
        {line('Of a clean joint', breakout.cleanTorque, null)}
        {line(`Allow for, ${sensible(breakout.ratio, 2)} × installed`, breakout.allowance, 'breakout')}
        {line('This set can give', breakout.capacity, 'capacity')}
        {line('Stud yields when seized, elastic', breakout.studCeilingElastic, 'studCeiling')}
        {line('Stud yields when seized, plastic', breakout.studCeilingPlastic, 'studCeiling')}
      </dl>
      <p className="small after">
        Installed torque: {breakout.installedSource} <Origin origin={breakout.installedOrigin} />
      </p>
    </section>
  );
}
