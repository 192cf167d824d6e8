import { type ReactNode, useState } from 'react';
import type { ReferenceChoices } from '../../../core/contract/register.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { Asked } from '../../components/asked.tsx';
import { Busy } from '../../components/busy.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { EMPTY_SET, takesToolSet, takesTorqueTool, toolFor } from '../../components/work-method.ts';
import { CardMargin } from './card-margin.tsx';
import { CardBody, CardHead, START } from './card-page.tsx';
import { IssueSetting } from './issue-setting.tsx';
import { keepSet, lastSet } from './last-set.ts';
import { SettingChoices } from './setting-choices.tsx';
import { useWorking } from './use-working.ts';

/** Working out a setting: choices on the left, the card as it will print in the middle, findings at the right. */
export function SettingDesk({ id }: { readonly id: string }) {
  const choices = useAsk('reference.choices', {});
  if (choices.data === undefined) {
    return (
      <Desk indexLabel="Choices" choices index={null}>
        <Asked asking={choices} what="the pass plans">
          {() => null}
        </Asked>
      </Desk>
    );
  }
  return <OpenDesk jointId={id} plans={choices.data.passPlans} />;
}

interface OpenDeskProps {
  readonly jointId: string;
  readonly plans: ReferenceChoices['passPlans'];
}

function OpenDesk({ jointId, plans }: OpenDeskProps) {
  const { today, folder } = useRegister();
  const [input, setInput] = useState<RequestInput<'setting.compute'>>(() => {
    const { tools, planId } = lastSet(folder);
    const plan = plans.find((each) => each.id === planId) ?? plans[0];
    return { jointId, kind: 'tightening', startsOn: today, endsOn: today, tools, planId: plan?.id ?? '' };
  });
  const asked = forMethod(input);
  const card = useAsk('setting.compute', asked, { keep: true });
  const takesSet = takesToolSet(asked.method ?? 'hydraulic wrench');
  const suits = useAsk('setting.suits', asked, { keep: true, enabled: takesSet });
  const joint = useAsk('joint.get', { id: jointId });
  const { chosen, choose, working } = useWorking(card.data ?? null);
  const [place, onPlace] = useState(START);
  const change = (next: RequestInput<'setting.compute'>) => {
    setInput(next);
    keepSet(folder, { tools: next.tools, planId: next.planId });
  };
  // Numbers of an earlier choice must not be read as the answer to this one.
  const stale = card.isPlaceholderData;
  const reading = { issued: null, chosen, onChoose: choose, place, onPlace };
  return (
    <Desk
      indexLabel="Choices"
      choices
      index={
        <SettingChoices
          input={input}
          plans={plans}
          suits={suits.data ?? null}
          faults={card.error?.error.details ?? []}
          onChange={change}
        />
      }
      margin={
        card.data && (
          <CardMargin card={card.data} working={working} stale={stale} issued={false}>
            <IssueSetting input={asked} card={card.data} stale={stale} />
          </CardMargin>
        )
      }
      below={
        card.data && (
          <Stale stale={stale}>
            <CardBody card={card.data} {...reading} />
          </Stale>
        )
      }
    >
      {card.data === undefined && (
        <Title name={joint.data?.data.tag ?? 'Setting'} beside={joint.data?.data.location} kind="Setting" />
      )}
      {card.error && <Failure error={card.error.error} what="No setting was worked out." />}
      {card.data === undefined && !card.error && <Busy what="Working out the setting" />}
      {card.data && (
        <Stale stale={stale}>
          <CardHead card={card.data} {...reading} />
        </Stale>
      )}
    </Desk>
  );
}

/** What belongs to another method stays on the desk, in case it is chosen again, and off the card. */
function forMethod(input: RequestInput<'setting.compute'>): RequestInput<'setting.compute'> {
  const by = input.method ?? 'hydraulic wrench';
  return {
    ...input,
    tools: takesToolSet(by) ? input.tools : EMPTY_SET,
    torqueTool: takesTorqueTool(by) ? toolFor(by, input.torqueTool ?? null) : null,
  };
}

interface StaleProps {
  readonly stale: boolean;
  readonly children: ReactNode;
}

function Stale({ stale, children }: StaleProps) {
  return (
    <div className={stale ? 'stale' : undefined} aria-busy={stale}>
      {children}
    </div>
  );
}
