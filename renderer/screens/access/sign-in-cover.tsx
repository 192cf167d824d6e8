import type { SignedInPerson } from '../../../core/contract/access.ts';
import { useAsk } from '../../app/ask.ts';
import { sessionEnds } from '../../app/session.ts';
import { Cover } from './cover.tsx';
import { SignInForm } from './sign-in-form.tsx';

/** Told calmly: nothing that was typed is lost, and the same person goes on where they were. */
export function SignInCover({ person }: { readonly person: SignedInPerson }) {
  const access = useAsk('access.state', {});
  const idle = access.data ? `${access.data.idleMinutes} minutes` : 'a while';
  return (
    <Cover label="Signed out">
      <div>
        <h1>{person.name} is signed out</h1>
        <p>
          The page and what was typed on it are kept beneath. Signed in again, {person.name} goes on where
          they were.
        </p>
        <p className="small">
          A window is signed out after {idle} in which nobody works at it, after a shift of 12 hours, when the
          secret is changed, and when the program starts anew.
        </p>
      </div>
      <SignInForm name={person.name} />
      <p className="small">
        Somebody else who signs in begins afresh; what {person.name} typed on this page is then left, apart
        from drafts.{' '}
        <button type="button" className="link small" onClick={sessionEnds}>
          Leave the page of {person.name}
        </button>
      </p>
    </Cover>
  );
}
