import type { RequestInput } from '../../../core/contract/requests.ts';
import { enter } from '../../../core/units/entered.ts';

/** What the person who asks puts in, as typed. */
export interface TermsForm {
  readonly unitId: string;
  readonly days: string;
  readonly mild: string;
  readonly intermediate: string;
  readonly critical: string;
  readonly effect: string;
  readonly cost: string;
  readonly cyclesLimit: string;
}

/** Assumptions to start from; a site puts in its own. */
export const START_TERMS: TermsForm = {
  unitId: '',
  days: '365',
  mild: '1',
  intermediate: '3',
  critical: '10',
  effect: '0.5',
  cost: '0.02',
  cyclesLimit: '30',
};

type Asked = RequestInput<'leak.verifyFirst'>;

/** A text that is no number goes on as typed, to be refused by name. */
const numberIn = (text: string): number => enter(text, 'one')?.si ?? (text as never);

export function termsInput(form: TermsForm, page: number, pageSize: number): Asked {
  return {
    unitId: form.unitId === '' ? null : form.unitId,
    days: numberIn(form.days),
    weights: {
      mild: numberIn(form.mild),
      intermediate: numberIn(form.intermediate),
      critical: numberIn(form.critical),
    },
    effect: numberIn(form.effect),
    cost: numberIn(form.cost),
    cyclesLimit: form.cyclesLimit.trim() === '' ? null : numberIn(form.cyclesLimit),
    page,
    pageSize,
  };
}
