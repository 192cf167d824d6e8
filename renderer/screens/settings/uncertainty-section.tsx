import type { SettingCard } from '../../../core/contract/setting.ts';
import { withUnit } from '../../app/text/number.ts';

/** What the load depends on, and how well the torque is known. */
export function UncertaintySection({
  uncertainty,
}: {
  readonly uncertainty: NonNullable<SettingCard['uncertainty']>;
}) {
  const { frictionShare, loadRelative, torqueRelative, parts, missing } = uncertainty;
  return (
    <section className="working" aria-labelledby="depends">
      <h2 id="depends">What the load depends on</h2>
      {frictionShare === null ? (
        <p className="small">The scatter of friction is not known, so the spread of the load is not known.</p>
      ) : (
        <div className="share">
          <span style={{ width: `${Math.round(frictionShare * 100)}%` }}>
            friction {withUnit(frictionShare, 'percent', 2)}
          </span>
        </div>
      )}
      <p className="small">
        {loadRelative !== null &&
          `Standard uncertainty of the load ${withUnit(loadRelative, 'percent', 2)}. `}
        Of the torque {withUnit(torqueRelative, 'percent', 2)}.
      </p>
      <table>
        <tbody>
          {parts.map((part) => (
            <tr key={part.name}>
              <td>{part.name}</td>
              <td className="num">{withUnit(part.u, 'N.m', 2)}</td>
              <td className="from">{part.basis}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {missing.length > 0 && <p className="faint">Not in this budget: {missing.join('; ')}.</p>}
    </section>
  );
}
