import { useRegister } from '../app/register.ts';
import { inFours } from '../app/text/head.ts';
import { counted } from '../app/text/number.ts';
import { day } from '../app/text/time.ts';

/** Only on paper: which register the page is from, so that it is told apart once it lies on a bench. */
export function PrintHead() {
  const { demo, siteName } = useRegister();
  return (
    <p className="only-print small">
      {demo ? <span className="demo-mark">Demo plant, invented</span> : siteName}
    </p>
  );
}

/** Only on paper: the day, and the head of the register that the page can be held against later. */
export function PrintFoot() {
  const { today, events, head, signIn } = useRegister();
  return (
    <p className="only-print small seal print-foot">
      <span>
        Printed on {day(today)} from Studbook.
        {signIn === 'none' && ' The register works without sign-in: names are claims.'}
      </span>
      {head && (
        <span>
          Register head over {counted(events, 'record')} {inFours(head)}
        </span>
      )}
    </p>
  );
}
