import { Link } from 'wouter';
import type { ReferenceChoices } from '../../../core/contract/register.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import { useAsk } from '../../app/ask.ts';
import { day } from '../../app/text/time.ts';
import { ToolSetFields } from '../../components/tool-set-fields.tsx';

interface SettingChoicesProps {
  readonly input: RequestInput<'setting.compute'>;
  readonly plans: ReferenceChoices['passPlans'];
  readonly onChange: (input: RequestInput<'setting.compute'>) => void;
}

/** What the card is worked out for, beside the page: every change works it out again. */
export function SettingChoices({ input, plans, onChange }: SettingChoicesProps) {
  const joint = useAsk('joint.get', { id: input.jointId });
  const set = (part: Partial<RequestInput<'setting.compute'>>) => onChange({ ...input, ...part });
  return (
    <div className="stack choices">
      <div>
        <h2>Setting for</h2>
        <Link href={`/joints/${input.jointId}`}>{joint.data?.data.tag ?? 'the joint'}</Link>
      </div>
      <div className="field">
        <label htmlFor="kind">Kind of work</label>
        <select
          id="kind"
          value={input.kind}
          onChange={(event) => set({ kind: event.target.value === 'breakout' ? 'breakout' : 'tightening' })}
        >
          <option value="tightening">Tightening</option>
          <option value="breakout">Breakout</option>
        </select>
      </div>
      <div className="field">
        <label htmlFor="startsOn">Job starts on</label>
        <input
          id="startsOn"
          type="date"
          required
          value={input.startsOn}
          onChange={(event) => event.target.value && set({ startsOn: event.target.value })}
        />
        <span className="hint">{day(input.startsOn)}</span>
      </div>
      <div className="field">
        <label htmlFor="endsOn">Job ends on</label>
        <input
          id="endsOn"
          type="date"
          required
          value={input.endsOn}
          onChange={(event) => event.target.value && set({ endsOn: event.target.value })}
        />
        <span className="hint">{day(input.endsOn)}</span>
      </div>
      <div className="field">
        <label htmlFor="planId">Pass plan</label>
        <select id="planId" value={input.planId} onChange={(event) => set({ planId: event.target.value })}>
          {plans.map((plan) => (
            <option key={plan.id} value={plan.id}>
              {plan.name}
              {plan.approved ? '' : ', not approved'}
            </option>
          ))}
        </select>
        <span className="hint">{plans.find((plan) => plan.id === input.planId)?.source}</span>
        <Link className="small" href="/plans">
          Pass plans and their approval
        </Link>
      </div>
      <h2>Tool set</h2>
      <ToolSetFields tools={input.tools} onChange={(tools) => set({ tools })} />
    </div>
  );
}
