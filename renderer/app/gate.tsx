import { Busy } from '../components/busy.tsx';
import { Failure } from '../components/failure.tsx';
import { FirstStart } from '../screens/start/first-start.tsx';
import { RegisterProblem } from '../screens/start/register-problem.tsx';
import { useAsk } from './ask.ts';
import { Frame } from './frame.tsx';
import { RegisterProvider } from './register.ts';

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
    <RegisterProvider value={state}>
      <Frame />
    </RegisterProvider>
  );
}
