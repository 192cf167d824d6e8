import { type FormEvent, type RefObject, useEffect, useId, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { RequestOutput } from '../../../core/contract/requests.ts';
import { useAsk, usePreview } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { AtShell, Key, Step, StepCautions, Trouble } from '../at-joint/parts.tsx';
import { JointIdentityView } from './joint-identity-view.tsx';
import { type Scanned, Verdict } from './verdict.tsx';

type Found = RequestOutput<'joint.find'>;

/** A tag scanned or typed, held against the joint whose job is open, with everything that tells it from others. */
export function IsThis({ id }: { readonly id: string | undefined }) {
  const opened = useAsk('joint.get', { id: id ?? '' }, { enabled: id !== undefined });
  const [scanned, setScanned] = useState<Scanned | null>(null);
  const field = useRef<HTMLInputElement>(null);
  // After the step's heading has taken the reading position: a scanner types into whatever has the focus.
  useEffect(() => field.current?.focus(), []);
  const job = opened.data ? { id: opened.data.id, tag: opened.data.data.tag } : null;
  const shown = scanned === null ? job?.id : scanned.joint?.id;
  return (
    <AtShell title="Is this my joint?" {...(job === null ? {} : { beside: `job opened: ${job.tag}` })}>
      <Step asks="Scan or type the tag on the joint before you">
        <StepCautions kind="tightening" step="joint" />
        <TagField field={field} onFound={(text, joint) => setScanned({ text, joint })} />
        {opened.error && (
          <Asked asking={opened} what="the job’s joint">
            {() => null}
          </Asked>
        )}
        {scanned && <Verdict scanned={scanned} job={job} />}
        {scanned === null && job && (
          <p className="at-said">Nothing is scanned yet. Below is the joint of the job that is open.</p>
        )}
        {shown && <JointIdentityView key={shown} id={shown} />}
        <Ways scanned={scanned} job={job} />
      </Step>
    </AtShell>
  );
}

interface TagFieldProps {
  readonly field: RefObject<HTMLInputElement | null>;
  readonly onFound: (text: string, joint: Found) => void;
}

/** Cleared for the next scan, which may come at any time. */
function TagField({ field, onFound }: TagFieldProps) {
  const id = useId();
  const [text, setText] = useState('');
  const find = usePreview('joint.find');
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    const tag = text.trim();
    if (tag === '') return;
    setText('');
    field.current?.focus();
    find.mutate({ text: tag }, { onSuccess: (joint) => onFound(tag, joint) });
  };
  return (
    <form className="at-scan" onSubmit={onSubmit}>
      <label htmlFor={id}>Tag</label>
      <input
        id={id}
        ref={field}
        data-scans
        type="text"
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        maxLength={200}
        value={text}
        onChange={(event) => setText(event.target.value)}
      />
      <button type="submit" className="key done">
        Look
      </button>
      <Trouble error={find.error?.error ?? null} what="The tag was not looked up." />
    </form>
  );
}

interface WaysProps {
  readonly scanned: Scanned | null;
  readonly job: { readonly id: string; readonly tag: string } | null;
}

/** On to the work only where the tag is that of the job; a tag of another joint leads back to its own page. */
function Ways({ scanned, job }: WaysProps) {
  const [, goTo] = useLocation();
  const joint = scanned?.joint ?? null;
  const same = joint !== null && (job === null || job.id === joint.id);
  return (
    <div className="keys">
      {same && (
        <Key main onClick={() => goTo(`/at/${joint.id}`)}>
          Work at {joint.tag}
        </Key>
      )}
      {joint && <Key onClick={() => goTo(`/joints/${joint.id}`)}>Page of {joint.tag}</Key>}
      {job && joint?.id !== job.id && <Key onClick={() => goTo(`/joints/${job.id}`)}>Page of {job.tag}</Key>}
      {job === null && joint === null && <Key onClick={() => goTo('/joints')}>To the list of joints</Key>}
    </div>
  );
}
