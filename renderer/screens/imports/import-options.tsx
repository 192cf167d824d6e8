import { useId } from 'react';
import type { ImportOptions } from '../../../core/contract/import.ts';
import { type QuantityKind, unitsOf } from '../../../core/units/units.ts';
import { unitLabel } from '../../app/text/number.ts';

const UNIT_QUESTIONS = ['length', 'stress', 'pressure', 'torque', 'temperature'] as const;
type UnitQuestion = (typeof UNIT_QUESTIONS)[number];

/** Answers so far; nothing is answered for the person. */
export interface Answers {
  readonly encoding: string;
  readonly delimiter: string;
  readonly decimalSign: string;
  readonly units: Readonly<Record<UnitQuestion, string>>;
}

export const UNANSWERED: Answers = {
  encoding: '',
  delimiter: '',
  decimalSign: '',
  units: { length: '', stress: '', pressure: '', torque: '', temperature: '' },
};

/** Answers for a file without quantities: nothing in it is read by them. */
export const NOTHING_MEASURED: Answers = {
  encoding: '',
  delimiter: '',
  decimalSign: '.',
  units: { length: 'mm', stress: 'MPa', pressure: 'bar', torque: 'N.m', temperature: 'degC' },
};

export function openQuestions(answers: Answers): string[] {
  const open: string[] = [];
  if (answers.encoding === '') open.push('encoding');
  if (answers.delimiter === '') open.push('delimiter');
  if (answers.decimalSign === '') open.push('decimal sign');
  for (const quantity of UNIT_QUESTIONS) {
    if (answers.units[quantity] === '') open.push(`unit of ${quantity}`);
  }
  return open;
}

/** Only to be sent when no question is open; the service checks the values. */
export const asOptions = (answers: Answers): ImportOptions => answers as unknown as ImportOptions;

interface ImportQuestionsProps {
  readonly answers: Answers;
  /** Whether the file holds quantities, whose units and decimal sign have to be known. */
  readonly measured: boolean;
  readonly onAnswer: (answers: Answers) => void;
}

export function ImportQuestions({ answers, measured, onAnswer }: ImportQuestionsProps) {
  const set = (part: Partial<Answers>) => onAnswer({ ...answers, ...part });
  const units = (quantity: QuantityKind) =>
    unitsOf(quantity).map((unit) => ({ value: unit as string, words: unitLabel(unit) }));
  return (
    <fieldset>
      <legend>How the file is written</legend>
      <p className="small lead-in">
        Asked once for the whole file and never guessed.
        {measured && ' A unit holds for every column of its kind.'}
      </p>
      <div className="fields narrow">
        <Question
          label="Encoding"
          value={answers.encoding}
          options={[
            { value: 'utf-8', words: 'UTF-8' },
            { value: 'windows-1252', words: 'Windows-1252' },
            { value: 'utf-16le', words: 'UTF-16, little endian' },
          ]}
          onAnswer={(encoding) => set({ encoding })}
        />
        <Question
          label="Delimiter"
          value={answers.delimiter}
          options={[
            { value: ',', words: 'comma' },
            { value: ';', words: 'semicolon' },
            { value: '\t', words: 'tab' },
          ]}
          onAnswer={(delimiter) => set({ delimiter })}
        />
        {measured && (
          <Question
            label="Decimal sign"
            value={answers.decimalSign}
            options={[
              { value: '.', words: 'point, as 12.5' },
              { value: ',', words: 'comma, as 12,5' },
            ]}
            onAnswer={(decimalSign) => set({ decimalSign })}
          />
        )}
        {(measured ? UNIT_QUESTIONS : []).map((quantity) => (
          <Question
            key={quantity}
            label={`Unit of ${quantity}`}
            value={answers.units[quantity]}
            options={units(quantity)}
            onAnswer={(unit) => set({ units: { ...answers.units, [quantity]: unit } })}
          />
        ))}
      </div>
    </fieldset>
  );
}

interface QuestionProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { value: string; words: string }[];
  readonly onAnswer: (value: string) => void;
}

function Question({ label, value, options, onAnswer }: QuestionProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onAnswer(event.target.value)}>
        <option value="">Choose</option>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.words}
          </option>
        ))}
      </select>
    </div>
  );
}
