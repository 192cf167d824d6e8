import { Link } from 'wouter';
import type { FieldFault } from '../../../core/contract/errors.ts';
import type { JointData } from '../../../core/contract/joint.ts';
import type { ReferenceChoices } from '../../../core/contract/register.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import type { Method, SuitRow } from '../../../core/contract/setting.ts';
import { useAsk } from '../../app/ask.ts';
import { day } from '../../app/text/time.ts';
import { SuitsProvider } from '../../components/suits.ts';
import { ToolSetFields } from '../../components/tool-set-fields.tsx';
import { boltSetOptions, METHODS, takesToolSet, takesTorqueTool } from '../../components/work-method.ts';
import { TorqueToolFields } from './torque-tool-fields.tsx';

interface SettingChoicesProps {
  readonly input: RequestInput<'setting.compute'>;
  readonly plans: ReferenceChoices['passPlans'];
  /** How the parts of the register suit this work; null while that is not known. */
  readonly suits: readonly SuitRow[] | null;
  /** Faults of the last try, shown beside the tool's fields. */
  readonly faults: readonly FieldFault[];
  readonly onChange: (input: RequestInput<'setting.compute'>) => void;
}

/** What the card is worked out for, beside the page: every change works it out again. */
export function SettingChoices({ input, plans, suits, faults, onChange }: SettingChoicesProps) {
  const joint = useAsk('joint.get', { id: input.jointId });
  const by = input.method ?? 'hydraulic wrench';
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
      <BoltSetChoice input={input} sets={joint.data?.data.boltSets ?? []} onChange={onChange} />
      <div className="field">
        <label htmlFor="method">Tightened with</label>
        <select id="method" value={by} onChange={(event) => set({ method: event.target.value as Method })}>
          {METHODS.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </div>
      {takesToolSet(by) && (
        <>
          <h2>Tool set</h2>
          <p className="small">
            What suits this joint stands first in each list; the rest says why it does not, and can be chosen
            to look at.
          </p>
          <SuitsProvider value={suits}>
            <ToolSetFields tools={input.tools} onChange={(tools) => set({ tools })} />
          </SuitsProvider>
        </>
      )}
      {takesTorqueTool(by) && (
        <TorqueToolFields method={by} faults={faults} onChange={(torqueTool) => set({ torqueTool })} />
      )}
      {input.kind === 'tightening' && (
        <div className="field">
          <label className="check">
            <input
              type="checkbox"
              checked={input.withUncertainty ?? false}
              onChange={(event) => set({ withUncertainty: event.target.checked })}
            />
            Simulate the spread of the load
          </label>
          <span className="hint">Takes a fraction of a second</span>
        </div>
      )}
    </div>
  );
}

interface BoltSetChoiceProps extends Pick<SettingChoicesProps, 'input' | 'onChange'> {
  readonly sets: JointData['boltSets'];
}

/** Only a joint with several sets of bolts asks which one. */
function BoltSetChoice({ input, sets, onChange }: BoltSetChoiceProps) {
  if (sets.length === 0) return null;
  return (
    <div className="field">
      <label htmlFor="boltSet">Bolt set</label>
      <select
        id="boltSet"
        value={input.boltSet ?? 0}
        onChange={(event) => onChange({ ...input, boltSet: Number(event.target.value) })}
      >
        {boltSetOptions(sets).map(({ value, words }) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}
