import { useState } from 'react';
import { useLocation } from 'wouter';
import type { RequestInput } from '../../../core/contract/requests.ts';
import type { Method, SettingCard } from '../../../core/contract/setting.ts';
import { useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { Failure } from '../../components/failure.tsx';
import { PersonChoice } from '../../components/people-choice.tsx';
import { keepSet, lastSet } from './last-set.ts';

interface IssueSettingProps {
  readonly input: RequestInput<'setting.compute'>;
  readonly card: SettingCard;
  readonly stale: boolean;
}

/** Freezing the card: possible while no refusal stands, and in somebody's name. */
export function IssueSetting({ input, card, stale }: IssueSettingProps) {
  const { folder } = useRegister();
  const [personId, setPersonId] = useState(lastSet(folder).issuerId);
  const [missing, setMissing] = useState(false);
  const issue = useWrite('setting.issue');
  const [, goTo] = useLocation();
  const refusals = card.findings.filter((finding) => finding.severity === 'refusal').length;

  const onIssue = () => {
    setMissing(personId === '');
    if (personId === '') return;
    keepSet(folder, { issuerId: personId });
    issue.mutate({ data: input, personId }, { onSuccess: (written) => goTo(`/settings/${written.id}`) });
  };
  return (
    <section className="issue" aria-label="Issue">
      <PersonChoice
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
        disabled={!card.issuable || stale || issue.isPending}
        aria-describedby="issue-why"
        onClick={onIssue}
      >
        Issue this setting
      </button>
      <p className="small" id="issue-why">
        {card.issuable
          ? `A second person checks ${CHECKED[card.method] ?? 'what is set on the tool'} before the first nut.`
          : `${refusals === 1 ? 'One refusal stands' : `${refusals} refusals stand`} against it. What was really done can still be recorded.`}
      </p>
      {issue.error && <Failure error={issue.error.error} what="The setting was not issued." />}
    </section>
  );
}

const CHECKED: Readonly<Partial<Record<Method, string>>> = {
  'hydraulic wrench': 'the gauge',
  tensioner: 'the tensioner and its pressure, by the tool’s own tables,',
};
