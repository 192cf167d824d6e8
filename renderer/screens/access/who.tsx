import { Link } from 'wouter';
import { rolesInWords } from '../../../core/access/roles.ts';
import { useRegister } from '../../app/register.ts';
import { useSignedIn } from '../../app/session.ts';
import { signOut } from '../../app/sign-in.ts';

/** In the frame of every page: who is signed in, or that nobody is and names are claims. */
export function Who() {
  const { signIn } = useRegister();
  const person = useSignedIn();
  if (signIn === 'none') {
    return (
      <Link className="claims small" href="/sign-in">
        No sign-in: names are claims
      </Link>
    );
  }
  if (person === null) return null;
  return (
    <span className="signed-in small">
      <Link href="/secret" className="small" title="Own secret">
        {person.name}
      </Link>
      , {person.roles.length === 0 ? 'no role' : rolesInWords(person.roles).replace(/ or /, ' and ')}{' '}
      <button type="button" className="link small" onClick={signOut}>
        Sign out
      </button>
    </span>
  );
}

/** The same where nothing but the work has room, and on paper. */
export function WhoInWords() {
  const { signIn } = useRegister();
  const person = useSignedIn();
  if (signIn === 'none') return <span>No sign-in: names are claims</span>;
  return person && <span>{person.name} is signed in</span>;
}
