import type { JobData, JobInput, JobScope } from '../../../core/contract/campaign.ts';
import { atSite } from '../../app/text/time.ts';
import { instantOf, numberOf } from './campaign-form-values.ts';

export interface JobForm {
  number: string;
  joint: { id: string; tag: string } | null;
  boltSet: string;
  scope: JobScope;
  temporary: boolean;
  workOrder: string;
  system: string;
  testPack: string;
  earliest: string;
  latest: string;
  isolationRef: string;
  permitRef: string;
  access: string;
  crews: string[];
  after: string;
  gapMinutes: string;
  breakMinutes: string;
  makeMinutes: string;
  dropped: boolean;
  remarks: string;
  personId: string;
  reason: string;
}

export const emptyJob = (): JobForm => ({
  number: '',
  joint: null,
  boltSet: '0',
  scope: 'break and make',
  temporary: false,
  workOrder: '',
  system: '',
  testPack: '',
  earliest: '',
  latest: '',
  isolationRef: '',
  permitRef: '',
  access: '',
  crews: [],
  after: '',
  gapMinutes: '0',
  breakMinutes: '',
  makeMinutes: '',
  dropped: false,
  remarks: '',
  personId: '',
  reason: '',
});

export const jobForm = (data: JobData, tag: string, timeZone: string): JobForm => {
  const local = (at: string | null) => (at === null ? '' : atSite(at, timeZone).slice(0, 16));
  const text = (minutes: number | null) => (minutes === null ? '' : String(minutes));
  return {
    number: data.number,
    joint: { id: data.jointId, tag },
    boltSet: String(data.boltSet),
    scope: data.scope,
    temporary: data.temporary,
    workOrder: data.workOrder,
    system: data.system,
    testPack: data.testPack,
    earliest: local(data.earliest),
    latest: local(data.latest),
    isolationRef: data.isolationRef,
    permitRef: data.permitRef,
    access: data.access,
    crews: data.crews,
    after: data.after.join('; '),
    gapMinutes: String(data.gapMinutes),
    breakMinutes: text(data.breakMinutes),
    makeMinutes: text(data.makeMinutes),
    dropped: data.dropped,
    remarks: data.remarks,
    personId: '',
    reason: '',
  };
};

/** What is fixed of a job is fixed and freed on the plan; the form leaves it as it is. */
export function jobInput(
  form: JobForm,
  campaignId: string,
  locked: JobData['locked'],
  timeZone: string,
): JobInput {
  const at = (text: string) => (text === '' ? null : instantOf(text, timeZone));
  const minutes = (text: string) => (text.trim() === '' ? null : (numberOf(text) as number));
  return {
    campaignId,
    number: form.number,
    jointId: form.joint?.id ?? '',
    boltSet: numberOf(form.boltSet) as number,
    scope: form.scope,
    temporary: form.temporary,
    workOrder: form.workOrder,
    system: form.system,
    testPack: form.testPack,
    earliest: at(form.earliest),
    latest: at(form.latest),
    isolationRef: form.isolationRef,
    permitRef: form.permitRef,
    access: form.access,
    crews: form.crews,
    after: form.after
      .split(';')
      .map((number) => number.trim())
      .filter((number) => number !== ''),
    gapMinutes: form.gapMinutes.trim() === '' ? 0 : (numberOf(form.gapMinutes) as number),
    breakMinutes: minutes(form.breakMinutes),
    makeMinutes: minutes(form.makeMinutes),
    locked: [...locked],
    dropped: form.dropped,
    remarks: form.remarks,
  };
}
