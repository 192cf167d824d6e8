import type { CaseInput } from '../../../core/contract/recall.ts';
import { enter } from '../../../core/units/entered.ts';
import { withOffset } from '../../app/text/time.ts';
import { blank, orNull, type Typed, textOrNull } from '../../components/typed.ts';

export interface CaseForm {
  about: 'tool' | 'batch';
  toolId: string;
  batchId: string;
  /** "certificate:…", "check:…", or "statement". */
  evidence: string;
  text: string;
  error: Typed;
  nutFactor: Typed;
  since: string;
  quarantine: boolean;
  happenedAt: string;
  personId: string;
  remarks: string;
}

export const emptyCase = (toolId: string, evidence: string, now: string): CaseForm => ({
  about: 'tool',
  toolId,
  batchId: '',
  evidence,
  text: '',
  error: blank('percent'),
  nutFactor: blank('one'),
  since: '',
  quarantine: true,
  happenedAt: now,
  personId: '',
  remarks: '',
});

export function caseInput(form: CaseForm, timeZone: string): CaseInput {
  const batch = form.about === 'batch';
  return {
    subject: batch ? { kind: 'batch', batchId: form.batchId } : { kind: 'tool', toolId: form.toolId },
    basis: basisInput(form),
    since: textOrNull(form.since),
    happenedAt: form.happenedAt === '' ? '' : withOffset(form.happenedAt, timeZone),
    personId: form.personId,
    quarantine: !batch && form.quarantine,
    remarks: form.remarks,
  };
}

function basisInput({ about, evidence, text, error, nutFactor }: CaseForm): CaseInput['basis'] {
  const [kind, id = ''] = evidence.split(':');
  if (about === 'tool' && kind === 'certificate') return { kind, certificateId: id };
  if (about === 'tool' && kind === 'check') return { kind, checkId: id };
  return {
    kind: 'statement',
    text,
    error: orNull(error) === null ? null : share(error),
    nutFactor: (about === 'batch' ? orNull(nutFactor) : null) as never,
  };
}

/** What can't be read is sent as it was typed, to be refused by name: as no number it would count as "not known". */
const share = (typed: Typed): number => enter(typed.text, typed.unit)?.si ?? (typed.text as never);
