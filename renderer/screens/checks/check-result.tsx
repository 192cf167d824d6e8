import { useFormContext, useWatch } from 'react-hook-form';
import type { CheckAssessment } from '../../../core/contract/check.ts';
import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { useFault } from '../../components/faults.ts';
import { SeverityMark } from '../../components/marks.tsx';
import type { CheckForm } from './check-form-values.ts';

interface ResultProps {
  readonly tool: ToolRecord;
  readonly assessment: CheckAssessment | undefined;
}

/** Passed or failed, with what stands against a pass and what a failed check does to the tool. */
export function CheckResult({ tool, assessment }: ResultProps) {
  const { register } = useFormContext<CheckForm>();
  const result: string = useWatch({ name: 'result' });
  const fault = useFault('result');
  const against = assessment?.against ?? [];
  const { number, status } = tool.data;
  const barred = status === 'quarantined' || status === 'scrapped';
  return (
    <fieldset data-field="result">
      <legend>Result</legend>
      <div className="steps">
        {['passed', 'failed'].map((each) => (
          <label key={each} className="check">
            <input type="radio" value={each} {...register('result')} />
            {each}
          </label>
        ))}
      </div>
      {fault && <p className="fault-line">{fault.allowed}</p>}
      <div role="status" className="after">
        {result === 'passed' && against.length > 0 && (
          <div className="f warning">
            <SeverityMark severity="warning" />
            <div>
              <h3 className="word">It can not be recorded as passed</h3>
              <ul className="reasons small">
                {against.map((each) => (
                  <li key={each}>{each}</li>
                ))}
              </ul>
            </div>
          </div>
        )}
        {result === 'failed' && (
          <p>
            {barred
              ? `${number} is ${status} already and stays so.`
              : `${number} is quarantined with this record: no setting takes it until somebody releases it.`}
          </p>
        )}
      </div>
    </fieldset>
  );
}
