import { useRef } from 'react';
import { Busy } from '../components/busy.tsx';
import { Failure } from '../components/failure.tsx';
import { Cover } from '../screens/access/cover.tsx';
import { OwnSecretForm } from '../screens/access/own-secret.tsx';
import { SignInCover } from '../screens/access/sign-in-cover.tsx';
import { SignInPage } from '../screens/access/sign-in-page.tsx';
import { FirstStart } from '../screens/start/first-start.tsx';
import { RegisterProblem } from '../screens/start/register-problem.tsx';
import { useAsk } from './ask.ts';
import { Frame } from './frame.tsx';
import { RegisterProvider } from './register.ts';
import { usePresence } from './session.ts';
import { useBeingThere } from './use-being-there.ts';

/** Nothing of the book is shown until its register is open; otherwise the page that says why. */
export function Gate() {
  const register = useAsk('register.state', {});
  if (register.error) {
    return (
      <main className="alone" id="page">
        <h1>The register does not answer</h1>
        <Failure error={register.error.error} />
        <div>
          <button type="button" className="quiet" onClick={() => register.refetch()}>
            Ask again
          </button>
        </div>
      </main>
    );
  }
  if (register.data === undefined) {
    return (
      <main className="alone" id="page">
        <h1>Studbook</h1>
        <Busy what="Opening the register" />
      </main>
    );
  }
  const state = register.data;
  if (state.state === 'none') return <FirstStart folder={state.folder} />;
  if (state.state === 'failed') return <RegisterProblem state={state} onRetry={() => register.refetch()} />;
  return (
    <RegisterProvider value={state}>{state.signIn === 'none' ? <Frame /> : <AskedWho />}</RegisterProvider>
  );
}

/** A page is opened for one person. When their session is over it stays as it is, covered, until they are back. */
function AskedWho() {
  const presence = usePresence();
  const openedFor = useRef<string | null>(null);
  useBeingThere(presence.is === 'here');
  if (presence.is === 'nobody') {
    openedFor.current = null;
    return <SignInPage />;
  }
  const { person } = presence;
  if (presence.is === 'here' && !person.secretToBeChanged) openedFor.current = person.personId;
  const page = openedFor.current === person.personId && <Frame key={person.personId} />;
  if (presence.is === 'over') {
    return (
      <>
        {page}
        <SignInCover person={person} />
      </>
    );
  }
  if (!person.secretToBeChanged) return page;
  return (
    <>
      {page}
      <Cover label="A secret of your own">
        <OwnSecretForm given />
      </Cover>
    </>
  );
}
