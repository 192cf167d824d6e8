import type { CheckQuestion } from '../contract/check.ts';
import type { Unit } from '../units/units.ts';
import { showNumber, showQuantity } from './number.ts';

type Asked = Pick<CheckQuestion, 'answer'> & Partial<Pick<CheckQuestion, 'unit'>>;

const USUAL: Readonly<Partial<Record<CheckQuestion['answer'], Unit>>> = { pressure: 'bar', torque: 'N.m' };

/**
 * Unit in which a question of a checklist is asked and its range is shown.
 *
 * @param question as stored; lists entered before units were asked for have none
 * @returns the unit; null for yes or no and for a plain number
 * @example answerUnit({ answer: 'pressure' }) // 'bar'
 * @source rule of this program
 */
export function answerUnit({ answer, unit }: Asked): Unit | null {
  return unit ?? USUAL[answer] ?? null;
}

/**
 * Says what a measured answer may be.
 *
 * @param question with its range in SI, or as a plain number
 * @returns text; empty where nothing bounds the answer
 * @example rangeWords({ answer: 'pressure', least: 6e7, most: 7e7, unit: 'bar' }) // 'at least 600 bar and at most 700 bar'
 * @source rule of this program
 */
export function rangeWords(question: Asked & Pick<CheckQuestion, 'least' | 'most'>): string {
  const unit = answerUnit(question);
  const show = (value: number) => (unit === null ? showNumber(value, 6) : showQuantity(value, unit, 6));
  const { least, most } = question;
  const ends = [
    ...(least === null ? [] : [`at least ${show(least)}`]),
    ...(most === null ? [] : [`at most ${show(most)}`]),
  ];
  return ends.join(' and ');
}
