import { type FormEvent, useEffect, useId, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { JointSummary } from '../../../core/contract/joint.ts';
import { scannedName } from '../../../core/text/scan-code.ts';
import { usePreview } from '../../app/ask.ts';
import { AtShell, Key, Step, Trouble } from './parts.tsx';

const MOST = 6;

const folded = (text: string) => text.normalize('NFKC').trim().toLowerCase();

/** The tag on the joint, scanned or typed, leads to the joint; nothing else is asked before that. */
export function FindJoint() {
  const id = useId();
  const [, goTo] = useLocation();
  const [text, setText] = useState('');
  const [asked, setAsked] = useState('');
  const [found, setFound] = useState<readonly JointSummary[]>([]);
  const field = useRef<HTMLInputElement>(null);
  const find = usePreview('joint.list');
  useEffect(() => field.current?.focus(), []);
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    const tag = scannedName('J', text);
    if (tag === '') return;
    const input = { text: tag.slice(0, 100), unitId: null, sort: 'tag', direction: 'asc' } as const;
    find.mutate(
      { ...input, page: 1, pageSize: 50 },
      {
        onSuccess: ({ rows }) => {
          const exact = rows.find((row) => folded(row.tag) === folded(tag));
          if (exact) goTo(`/at/${exact.id}`);
          setAsked(tag);
          setFound(rows.slice(0, MOST));
          setText('');
        },
      },
    );
  };
  return (
    <AtShell title="At the joint">
      <Step asks="Scan or type the tag on the joint">
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
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
          <button type="submit" className="key done">
            Open the joint
          </button>
        </form>
        <Trouble error={find.error?.error ?? null} what="The joint was not looked up." />
        <p role="status" className="at-said">
          {asked !== '' && (found.length === 0 ? notFound(asked) : notExactly(asked))}
        </p>
        <div className="keys list">
          {found.map((joint) => (
            <Key key={joint.id} onClick={() => goTo(`/at/${joint.id}`)}>
              <b>{joint.tag}</b> {[joint.unitName, joint.location].filter(Boolean).join(', ')}
            </Key>
          ))}
        </div>
        <div className="keys">
          <Key onClick={() => goTo('/is-this')}>Is this my joint?</Key>
          <Key onClick={() => goTo('/joints')}>To the list of joints</Key>
        </div>
      </Step>
    </AtShell>
  );
}

const notFound = (tag: string) =>
  `No joint has the tag “${tag}”. Look at the tag again before anything else.`;
const notExactly = (tag: string) =>
  `No joint has exactly the tag “${tag}”. These are like it: hold each against the tag on the joint.`;
