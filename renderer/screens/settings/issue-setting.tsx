import { useState } from 'react';
import { useLocation } from 'wouter';
import { mayOverride } from '../../../core/access/overrides.ts';
import { hasOneOf, rolesInWords } from '../../../core/access/roles.ts';
import type { SignedInPerson } from '../../../core/contract/access.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import type { Method, SettingCard } from '../../../core/contract/setting.ts';
import { useWrite } from '../../app/ask.ts';
import { useForWhom } from '../../app/for-whom.ts';
import { useRegister } from '../../app/register.ts';
import { useSignedIn } from '../../app/session.ts';
import { Failure } from '../../components/failure.tsx';
import { SignerChoice } from '../../components/people-choice.tsx';
import { keepSet, lastSet } from './last-set.ts';
import { OverrideDialog, refusalsOf } from './override-dialog.tsx';

interface IssueSettingProps {
  readonly input: RequestInput<'setting.compute'>;
  readonly card: SettingCard;
  readonly stale: boolean;
}

/** Freezing the card, in somebody's name: while no refusal stands, or by somebody who may set those aside. */
export function IssueSetting({ input, card, stale }: IssueSettingProps) {
  const { folder } = useRegister();
  const person = useSignedIn();
  const forWhom = useForWhom('setting.issue');
  const [personId, setPersonId] = useState(lastSet(folder).issuerId);
  const [missing, setMissing] = useState(false);
  const [overriding, setOverriding] = useState(false);
  const [reasons, setReasons] = useState<Readonly<Record<string, string>>>({});
  const issue = useWrite('setting.issue');
  const [, goTo] = useLocation();

  const send = (overrides: RequestInput<'setting.issue'>['overrides']) => {
    setMissing(personId === '');
    if (personId === '') return;
    keepSet(folder, { issuerId: personId });
    issue.mutate(
      { data: input, personId, overrides },
      { onSuccess: (written) => goTo(`/settings/${written.id}`) },
    );
  };
  const onOverride = () =>
    send(refusalsOf(card).map(([code]) => ({ code, reason: (reasons[code] ?? '').trim() })));
  return (
    <section className="issue" aria-label="Issue">
      <SignerChoice
        label="Issued by"
        chosen={personId}
        onChoose={setPersonId}
        fault={
          missing && personId === '' ? 'Nobody is chosen. A setting is issued in one person’s name.' : null
        }
      />
      <button
        type="button"
        className="act"
        disabled={!card.issuable || stale || issue.isPending || forWhom !== null}
        aria-describedby="issue-why"
        onClick={() => send([])}
      >
        Issue this setting
      </button>
      <p className="small" id="issue-why">
        {forWhom !== null
          ? `Settings are issued by ${forWhom}. What was really done can still be recorded.`
          : card.issuable
            ? `A second person checks ${CHECKED[card.method] ?? 'what is set on the tool'} before the first nut.`
            : whyNot(card, person)}
      </p>
      {forWhom === null && !card.issuable && mayOverrideOne(card, person) && (
        <button type="button" className="quiet" disabled={stale} onClick={() => setOverriding(true)}>
          Override a refusal
        </button>
      )}
      {issue.error && !overriding && <Failure error={issue.error.error} what="The setting was not issued." />}
      {overriding && person !== null && (
        <OverrideDialog
          card={card}
          name={person.name}
          reasons={reasons}
          onReason={(code, reason) => setReasons({ ...reasons, [code]: reason })}
          busy={issue.isPending}
          error={issue.error?.error ?? null}
          onIssue={onOverride}
          onLeave={() => setOverriding(false)}
        />
      )}
    </section>
  );
}

/** Whether the person may set aside one of the refusals, so that the window shows what stands in the way of the rest. */
function mayOverrideOne(card: SettingCard, person: SignedInPerson | null): boolean {
  return (
    person !== null &&
    refusalsOf(card).some(([code]) => hasOneOf(person.roles, mayOverride(code)?.roles ?? []))
  );
}

function whyNot(card: SettingCard, person: SignedInPerson | null): string {
  const refusals = refusalsOf(card);
  const count = card.findings.filter(({ severity }) => severity === 'refusal').length;
  const barred = refusals.filter(([code]) => mayOverride(code) === null);
  const roles = [...new Set(refusals.flatMap(([code]) => mayOverride(code)?.roles ?? []))];
  const stands = count === 1 ? 'One refusal stands against it' : `${count} refusals stand against it`;
  const who =
    barred.length > 0
      ? `nobody may override ${barred.map(([, findings]) => `“${findings[0]?.title}”`).join(', ')}`
      : person === null
        ? 'without sign-in nobody overrides'
        : hasOneOf(person.roles, roles)
          ? 'they may be overridden with a reason'
          : `${rolesInWords(roles)} may override with a reason`;
  return `${stands}; ${who}. What was really done can still be recorded.`;
}

const CHECKED: Readonly<Partial<Record<Method, string>>> = {
  'hydraulic wrench': 'the gauge',
  tensioner: 'the tensioner and its pressure, by the tool’s own tables,',
};
