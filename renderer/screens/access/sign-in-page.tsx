import { useRegister } from '../../app/register.ts';
import { SignInForm } from './sign-in-form.tsx';

export function SignInPage() {
  const { siteName, demo } = useRegister();
  return (
    <main className="alone" id="page">
      <div>
        <h1>Sign in</h1>
        <p className="small">
          {demo ? <span className="demo-mark">Demo plant, invented</span> : siteName}. What is recorded,
          issued and approved stands in the name of whoever is signed in.
        </p>
      </div>
      <SignInForm />
      <p className="small">
        An administrator of this register gives a new secret for one that was forgotten.
      </p>
    </main>
  );
}
