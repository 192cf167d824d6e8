import { type FormEvent, useState } from 'react';
import { queryClient } from '../../app/ask.ts';
import { send } from '../../app/send.ts';
import { signIn, useAttempt } from '../../app/sign-in.ts';
import { Busy } from '../../components/busy.tsx';
import { Failure } from '../../components/failure.tsx';
import { SecretField } from '../access/secret-field.tsx';

const ZONES = ['UTC', ...Intl.supportedValuesOf('timeZone')];
const HERE = Intl.DateTimeFormat().resolvedOptions().timeZone;

/** First start: an empty register for this site, or the invented demo plant. */
export function FirstStart({ folder }: { readonly folder: string }) {
  const [content, setContent] = useState<'empty' | 'demo'>('empty');
  const [siteName, setSiteName] = useState('');
  const [timeZone, setTimeZone] = useState(ZONES.includes(HERE) ? HERE : 'UTC');
  const [withSignIn, setWithSignIn] = useState<boolean | null>(null);
  const [name, setName] = useState('');
  const [secret, setSecret] = useState('');
  const [key] = useState(() => crypto.randomUUID());
  const { busy, error, attempt } = useAttempt();
  // The demo is looked at by one person; a site's register is offered with sign-in first.
  const asksWho = withSignIn ?? content === 'empty';

  const onSubmit = async (event: FormEvent) => {
    event.preventDefault();
    const administrator = asksWho ? { name, secret } : null;
    const made = await attempt(() =>
      send('register.create', {
        key,
        data:
          content === 'demo' ? { content, administrator } : { content, siteName, timeZone, administrator },
      }),
    );
    if (made === null) return;
    if (asksWho) await signIn(name, secret);
    await queryClient.invalidateQueries();
  };

  return (
    <main className="alone" id="page">
      <div>
        <h1>Open a new register</h1>
        <p className="small">
          Studbook keeps joints, tools, certificates and what was done in one register file. There is none yet
          in {folder}.
        </p>
      </div>
      <form className="stack" onSubmit={onSubmit}>
        <fieldset className="stack tight">
          <legend>What it starts with</legend>
          <label className="check">
            <input
              type="radio"
              name="content"
              checked={content === 'empty'}
              onChange={() => setContent('empty')}
            />
            Empty register for a site
          </label>
          <label className="check">
            <input
              type="radio"
              name="content"
              checked={content === 'demo'}
              onChange={() => setContent('demo')}
            />
            Demo plant, everything in it invented
          </label>
        </fieldset>
        {content === 'empty' && (
          <div className="fields">
            <div className="field">
              <label htmlFor="site">Site name</label>
              <input id="site" value={siteName} onChange={(event) => setSiteName(event.target.value)} />
            </div>
            <div className="field">
              <label htmlFor="zone">Time zone of the site</label>
              <select id="zone" value={timeZone} onChange={(event) => setTimeZone(event.target.value)}>
                {ZONES.map((zone) => (
                  <option key={zone}>{zone}</option>
                ))}
              </select>
              <span className="hint">Decides which day it is when a certificate lapses.</span>
            </div>
          </div>
        )}
        <fieldset className="stack tight">
          <legend>Who works at it</legend>
          <label className="check">
            <input type="radio" name="who" checked={asksWho} onChange={() => setWithSignIn(true)} />
            Everybody signs in; name the first administrator now
          </label>
          <label className="check">
            <input type="radio" name="who" checked={!asksWho} onChange={() => setWithSignIn(false)} />
            Work without sign-in for now; names in records are then claims
          </label>
        </fieldset>
        {asksWho && (
          <div className="fields">
            <div className="field">
              <label htmlFor="administrator">Name of the administrator</label>
              <input
                id="administrator"
                name="administrator.name"
                autoComplete="username"
                value={name}
                onChange={(event) => setName(event.target.value)}
              />
              <span className="hint">Names people, gives roles and first secrets</span>
            </div>
            <SecretField
              label="Secret"
              name="administrator.secret"
              fresh
              value={secret}
              onChange={setSecret}
            />
          </div>
        )}
        {error && <Failure error={error} what="No register was made." />}
        {busy ? (
          <Busy what={content === 'demo' ? 'Writing the demo plant' : 'Making the register'} />
        ) : (
          <div>
            <button type="submit" className="act">
              {content === 'demo' ? 'Open the demo plant' : 'Make the register'}
            </button>
          </div>
        )}
      </form>
    </main>
  );
}
