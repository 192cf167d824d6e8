import type { CheckData, ChecklistData } from '../../../core/contract/check.ts';
import type { FieldFault } from '../../../core/contract/errors.ts';

export interface AnswerFault extends FieldFault {
  /** A number where yes or no belongs, or the other way round. */
  readonly wrongKind: boolean;
}

/** Answers that keep a check from passing: of another kind, not given, no, or outside the allowed range. */
export function answerFaults({ questions }: ChecklistData, answers: CheckData['answers']): AnswerFault[] {
  return questions.flatMap(({ text, answer: kind, least, most }, index): AnswerFault[] => {
    const answer = answers[index] ?? null;
    const fault = (allowed: string, wrongKind = false): AnswerFault[] => [
      { field: `data.answers.${index}`, value: answer === null ? '' : String(answer), allowed, wrongKind },
    ];
    if (answer === null) return fault(`an answer to "${text}", or the check has not passed`);
    if (kind === 'yes or no') {
      if (typeof answer !== 'boolean') return fault(`yes or no to "${text}"`, true);
      return answer ? [] : fault(`yes to "${text}", or the check has not passed`);
    }
    if (typeof answer !== 'number') return fault(`a number for "${text}"`, true);
    const inside = (least === null || answer >= least) && (most === null || answer <= most);
    const range = [
      least === null ? [] : [`at least ${least}`],
      most === null ? [] : [`at most ${most}`],
    ].flat();
    return inside ? [] : fault(`${range.join(' and ')} for "${text}", or the check has not passed`);
  });
}
