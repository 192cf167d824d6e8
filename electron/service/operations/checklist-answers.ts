import type { CheckData, ChecklistData } from '../../../core/contract/check.ts';
import type { FieldFault } from '../../../core/contract/errors.ts';
import { answerUnit, rangeWords } from '../../../core/text/check-words.ts';
import { showNumber, showQuantity } from '../../../core/text/number.ts';

export interface AnswerFault extends FieldFault {
  /** A number where yes or no belongs, or the other way round. */
  readonly wrongKind: boolean;
}

/** Answers that keep a check from passing: of another kind, not given, no, or outside the allowed range. */
export function answerFaults({ questions }: ChecklistData, answers: CheckData['answers']): AnswerFault[] {
  return questions.flatMap((question, index): AnswerFault[] => {
    const { text, answer: kind, least, most } = question;
    const answer = answers[index] ?? null;
    const fault = (allowed: string, wrongKind = false): AnswerFault[] => [
      { field: `data.answers.${index}`, value: shown(question, answer), allowed, wrongKind },
    ];
    if (answer === null) return fault(`an answer to "${text}", or the check has not passed`);
    if (kind === 'yes or no') {
      if (typeof answer !== 'boolean') return fault(`yes or no to "${text}"`, true);
      return answer ? [] : fault(`yes to "${text}", or the check has not passed`);
    }
    if (typeof answer !== 'number') return fault(`a number for "${text}"`, true);
    const inside = (least === null || answer >= least) && (most === null || answer <= most);
    return inside ? [] : fault(`${rangeWords(question)} for "${text}", or the check has not passed`);
  });
}

type Question = ChecklistData['questions'][number];

/** As a person gave it: a quantity is stored in SI and was not typed so. */
function shown(question: Question, answer: CheckData['answers'][number]): string {
  if (answer === null) return '';
  if (typeof answer === 'boolean') return answer ? 'yes' : 'no';
  const unit = answerUnit(question);
  return unit === null ? showNumber(answer, 6) : showQuantity(answer, unit, 6);
}
