import type { CompetenceData, CompetenceInput } from '../../../core/contract/access.ts';
import type { Method } from '../../../core/contract/setting.ts';

export interface CompetenceForm {
  scheme: string;
  level: string;
  methods: Method[];
  jointTypes: string;
  certificate: string;
  assessor: string;
  issuedOn: string;
  validUntil: string;
  lastPracticeOn: string;
  restrictions: string;
  withdrawn: boolean;
  remarks: string;
}

export const EMPTY_COMPETENCE: CompetenceForm = {
  scheme: '',
  level: '',
  methods: [],
  jointTypes: '',
  certificate: '',
  assessor: '',
  issuedOn: '',
  validUntil: '',
  lastPracticeOn: '',
  restrictions: '',
  withdrawn: false,
  remarks: '',
};

export function competenceForm({ personId: _, ...data }: CompetenceData): CompetenceForm {
  return {
    ...data,
    methods: [...data.methods],
    validUntil: data.validUntil ?? '',
    lastPracticeOn: data.lastPracticeOn ?? '',
  };
}

/** A day left empty is one the paper does not state. */
export function competenceInput(form: CompetenceForm, personId: string): CompetenceInput {
  return {
    ...form,
    personId,
    validUntil: form.validUntil || null,
    lastPracticeOn: form.lastPracticeOn || null,
  };
}
