import { useId } from 'react';
import { useFormContext } from 'react-hook-form';
import type { ChecklistRow, CheckQuestion } from '../../../core/contract/check.ts';
import { answerUnit, rangeWords } from '../../../core/text/check-words.ts';
import { UNITS, unitsOf } from '../../../core/units/units.ts';
import { unitLabel } from '../../app/text/number.ts';
import { described, useFault } from '../../components/faults.ts';
import type { CheckForm } from './check-form-values.ts';

/** The list's questions in their order, each answered on its line; a line may stay open, and then says nothing. */
export function CheckAnswers({ list }: { readonly list: ChecklistRow }) {
  return (
    <fieldset>
      <legend>{list.data.name}</legend>
      <p className="small lead-in">Yes means as it should be. A line without an answer was not looked at.</p>
      <ol className="questions">
        {list.data.questions.map((question, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a list's questions never change place
          <li key={at}>
            {question.answer === 'yes or no' ? (
              <YesNo listId={list.id} question={question} at={at} />
            ) : (
              <Measured listId={list.id} question={question} at={at} />
            )}
          </li>
        ))}
      </ol>
    </fieldset>
  );
}

interface LineProps {
  readonly listId: string;
  readonly question: CheckQuestion;
  readonly at: number;
}

const CHOICES = [
  ['yes', 'yes'],
  ['no', 'no'],
  ['', 'not looked at'],
] as const;

function YesNo({ listId, question, at }: LineProps) {
  const { register } = useFormContext<CheckForm>();
  const fault = useFault(`answers.${at}`);
  return (
    <fieldset data-field={`answers.${at}`} className="question">
      <legend>
        {at + 1}. {question.text}
      </legend>
      <div className="answer">
        {CHOICES.map(([value, words]) => (
          <label key={value} className="check">
            <input type="radio" value={value} {...register(`answers.${listId}.${at}.text`)} />
            {words}
          </label>
        ))}
      </div>
      {fault && <p className="fault-line">{fault.allowed}</p>}
    </fieldset>
  );
}

function Measured({ listId, question, at }: LineProps) {
  const id = useId();
  const { register } = useFormContext<CheckForm>();
  const fault = useFault(`answers.${at}`);
  const unit = answerUnit(question);
  const range = rangeWords(question);
  return (
    <div className="question">
      <label htmlFor={id}>
        {at + 1}. {question.text}
      </label>
      <div className={unit === null ? 'answer' : 'answer quantity'}>
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          data-field={`answers.${at}`}
          {...described(id, fault, range)}
          {...register(`answers.${listId}.${at}.text`)}
        />
        {unit !== null && (
          <select aria-label={`Unit of question ${at + 1}`} {...register(`answers.${listId}.${at}.unit`)}>
            {unitsOf(UNITS[unit].quantity).map((each) => (
              <option key={each} value={each}>
                {unitLabel(each)}
              </option>
            ))}
          </select>
        )}
      </div>
      {fault && (
        <p className="fault-line" id={`${id}-fault`}>
          {fault.allowed}
        </p>
      )}
      {range !== '' && (
        <p className="small" id={`${id}-hint`}>
          As it should be: {range}
        </p>
      )}
    </div>
  );
}
