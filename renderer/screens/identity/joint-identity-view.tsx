import type { JointDetail, LookAlikeRow } from '../../../core/contract/joint.ts';
import type { JointStandingView } from '../../../core/contract/life.ts';
import { describeIdentity } from '../../../core/joint/describe-identity.ts';
import { identityOf, retainsPressure } from '../../../core/joint/identity.ts';
import { describeBolting, describeFlange } from '../../../core/text/describe.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Unknown } from '../../components/number.tsx';
import { Picture } from '../../components/picture.tsx';

/** A joint as it is found on the plant, and the ones it could be taken for. */
export function JointIdentityView({ id }: { readonly id: string }) {
  const joint = useAsk('joint.get', { id });
  const standing = useAsk('joint.standing', { id });
  return (
    <Asked asking={joint} what="the joint">
      {(detail) => (
        <>
          <Asked asking={standing} what="its state">
            {(state) => <Identity joint={detail} standing={state} />}
          </Asked>
          <LookAlikes id={id} />
        </>
      )}
    </Asked>
  );
}

interface IdentityProps {
  readonly joint: JointDetail;
  readonly standing: JointStandingView;
}

function Identity({ joint, standing }: IdentityProps) {
  const { timeZone } = useRegister();
  const { data } = joint;
  const identity = identityOf(data);
  const { valve, landmark } = describeIdentity(identity);
  const known: [string, string | null][] = [
    ['Side of the valve', valve],
    ['Landmark', landmark],
    ['Where it is', data.location || null],
    ['Neighbours', listed(identity.neighbours)],
    ['Line or equipment', identity.line || null],
    ['What flows through it', data.service || null],
    ['Flange', describeFlange(data.flange)],
    ['Bolts', boltWords(joint)],
    ['Isolation boundary', identity.isolationBoundary || null],
    ['Isolation', standing.isolationRef],
    ['State', standing.state === 'unassessed' ? null : standing.state],
    ['Permit', permitWords(standing, timeZone)],
  ];
  return (
    <div className="at-identity">
      <div>
        <p className="at-tag">{data.tag}</p>
        <p className="at-said">{joint.unitName}</p>
        <dl className="at-handover">
          {known.map(([name, text]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{text ?? <Unknown />}</dd>
            </div>
          ))}
        </dl>
      </div>
      {identity.photo === null ? (
        <p className="at-said">No photo is kept with this joint.</p>
      ) : (
        <Picture hash={identity.photo} label={`Photo of ${data.tag}`} />
      )}
    </div>
  );
}

function permitWords({ permitRef, permitUntil }: JointStandingView, timeZone: string): string | null {
  if (permitRef === null) return null;
  return permitUntil === null
    ? `${permitRef}, its end not stated`
    : `${permitRef}, until ${moment(permitUntil, timeZone)}`;
}

function boltWords({ data, boltCount }: JointDetail): string {
  const { thread } = data.bolting;
  const bolts =
    thread === null && boltCount !== null
      ? `${boltCount}, thread not entered`
      : describeBolting({ count: boltCount, thread });
  const retains = retainsPressure(data.bolting);
  if (retains === null) return `${bolts}; whether they hold the pressure in is not known`;
  return retains ? `${bolts}; they hold the pressure in` : `${bolts}; they do not hold the pressure in`;
}

const listed = (tags: readonly string[] | null) =>
  tags === null ? null : tags.length === 0 ? 'none' : tags.join(', ');

function LookAlikes({ id }: { readonly id: string }) {
  const asked = useAsk('joint.lookAlikes', { id });
  return (
    <section aria-labelledby="taken-for">
      <h3 id="taken-for">It could be taken for</h3>
      <Asked asking={asked} what="look-alikes">
        {({ rows }) =>
          rows.length === 0 ? (
            <p className="at-said">
              The register knows no joint that looks like it. One that nobody entered would not be found.
            </p>
          ) : (
            <ul className="at-list">
              {rows.map((row) => (
                <LookAlike key={row.id} row={row} />
              ))}
            </ul>
          )
        }
      </Asked>
    </section>
  );
}

function LookAlike({ row }: { readonly row: LookAlikeRow }) {
  return (
    <li>
      <b>{row.tag}</b>, {row.reasons.join('; ')}
      {row.oneIsLive && <span className="at-flag">one of the two is isolated, the other is not</span>}
      {row.tells.map((tell) => (
        <div key={tell}>{tell}</div>
      ))}
      {row.differences.length > 0 && (
        <table className="at-differences">
          <thead>
            <tr>
              <th scope="col">
                <span className="unseen">What differs</span>
              </th>
              <th scope="col">Here</th>
              <th scope="col">{row.tag}</th>
            </tr>
          </thead>
          <tbody>
            {row.differences.map(({ what, here, there }) => (
              <tr key={what}>
                <th scope="row">{what}</th>
                <td>{here ?? <Unknown />}</td>
                <td>{there ?? <Unknown />}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </li>
  );
}
