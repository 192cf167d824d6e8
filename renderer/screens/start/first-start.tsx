import { type FormEvent, useState } from 'react';
import { useWrite } from '../../app/ask.ts';
import { Busy } from '../../components/busy.tsx';
import { Failure } from '../../components/failure.tsx';

const ZONES = ['UTC', ...Intl.supportedValuesOf('timeZone')];
const HERE = Intl.DateTimeFormat().resolvedOptions().timeZone;

/** First start: an empty register for this site, or the invented demo plant. */
export function FirstStart({ folder }: { readonly folder: string }) {
  const [content, setContent] = useState<'empty' | 'demo'>('empty');
  const [siteName, setSiteName] = useState('');
  const [timeZone, setTimeZone] = useState(ZONES.includes(HERE) ? HERE : 'UTC');
  const create = useWrite('register.create');

  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    create.mutate({ data: content === 'demo' ? { content } : { content, siteName, timeZone } });
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
        {create.error && <Failure error={create.error.error} what="No register was made." />}
        {create.isPending ? (
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
