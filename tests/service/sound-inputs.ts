import { randomUUID } from 'node:crypto';
import type { RequestName } from '../../core/contract/names.ts';
import type { RequestInput } from '../../core/contract/requests.ts';
import { key } from './ask.ts';
import { breakoutOf, jointA, settingFor, type TestPlant, tighteningOf } from './records.ts';

const HAPPENED = '2026-03-16T09:00:00+01:00';
const stranger = randomUUID();
const fresh = () => ({ key: key(), id: null, version: null });

interface Sending {
  readonly plant: TestPlant;
  readonly personId: string;
  /** What a right hangs on, where it hangs on something. */
  readonly choice: string | null;
}

type Sound = { readonly [N in RequestName]?: (sending: Sending) => RequestInput<N> };

/**
 * One input for each request that not every role may ask, and for each in which somebody signs. Only the schema has to
 * hold: where the right reaches the handler, that one answers, mostly that there is no such record.
 */
export const SOUND: Sound = {
  'access.changeSecret': () => ({ currentSecret: 'not this secret', secret: 'another long secret' }),
  'access.giveSecret': () => ({ key: key(), personId: stranger, secret: 'another long secret' }),
  'person.save': () => ({ ...fresh(), data: { name: `Person ${randomUUID()}`, role: '' } }),
  'person.saveRoles': () => ({ key: key(), id: stranger, version: null, roles: ['planner'] }),
  'competence.save': () => ({
    ...fresh(),
    data: { personId: stranger, scheme: 'EN 1591-4', issuedOn: '2026-01-01' },
  }),
  'unit.save': () => ({ ...fresh(), data: { name: `Unit ${randomUUID()}` } }),
  'joint.save': ({ plant }) => ({ ...fresh(), data: jointA(plant.unitId, `J-${randomUUID().slice(0, 8)}`) }),
  'tool.save': () => ({
    ...fresh(),
    data: {
      number: `T-${randomUUID().slice(0, 8)}`,
      serial: '',
      status: 'available',
      place: '',
      remarks: '',
      properties: { class: 'pump', ratedPressure: { text: '700', unit: 'bar' } },
    },
  }),
  'tool.move': ({ personId, choice }) => ({
    key: key(),
    data: {
      toolIds: [stranger],
      step: choice as 'issue',
      happenedAt: HAPPENED,
      personId,
      holderId: null,
      condition: null,
      place: '',
      reference: '',
      reason: '',
    },
  }),
  'tool.check': ({ personId }) => ({
    key: key(),
    data: {
      toolId: stranger,
      kind: 'visual',
      happenedAt: HAPPENED,
      personId,
      checklist: null,
      result: 'passed',
      remarks: '',
    },
  }),
  'certificate.add': () => ({
    key: key(),
    data: {
      number: 'C-9',
      toolId: stranger,
      withToolIds: [],
      laboratory: 'Laboratory',
      calibratedOn: '2026-01-10',
      validUntil: '2027-01-09',
      validityBasis: 'site rule',
      result: 'within limits',
      condition: 'as left',
      measured: {
        kind: 'gauge',
        points: ['0', '500', '1000'].map((text) => ({
          indicated: { text, unit: 'bar' as const },
          reference: { text, unit: 'bar' as const },
        })),
      },
      remarks: '',
    },
  }),
  'checklist.save': () => ({
    key: key(),
    id: stranger,
    version: 1,
    data: {
      name: 'List',
      kind: 'visual',
      classes: ['pump'],
      questions: [{ text: 'In order', answer: 'yes or no' }],
      source: 'instructions',
      everyDays: null,
      everyUses: null,
    },
  }),
  'toolRule.save': () => ({
    key: key(),
    id: stranger,
    version: 1,
    data: {
      class: 'pump',
      certificateDays: null,
      certificateUses: null,
      dueAt: 'exact day',
      source: 'procedure',
    },
  }),
  'kit.save': () => ({
    key: key(),
    id: stranger,
    version: 1,
    data: { name: 'Kit', reference: '', from: '2026-03-16', to: '2026-03-17', toolIds: [], remarks: '' },
  }),
  'campaign.save': () => ({
    ...fresh(),
    data: {
      name: `Campaign ${randomUUID()}`,
      startsAt: '2026-04-01T06:00:00+02:00',
      endsAt: '2026-04-15T18:00:00+02:00',
    },
  }),
  'job.save': ({ personId }) => ({
    ...fresh(),
    data: { campaignId: stranger, number: 'N-1', jointId: stranger, scope: 'break and make' },
    personId,
    reason: 'on the list',
  }),
  'attachment.add': ({ personId }) => ({
    key: key(),
    data: {
      owner: { kind: 'tool', id: stranger },
      name: 'a.pdf',
      mediaType: 'application/pdf',
      content: 'YQ==',
      personId,
      remarks: '',
    },
  }),
  'case.open': ({ personId }) => ({
    key: key(),
    data: {
      subject: { kind: 'tool', toolId: stranger },
      basis: { kind: 'statement', text: 'slips', error: null },
      happenedAt: HAPPENED,
      personId,
      remarks: '',
    },
  }),
  'case.decide': ({ personId }) => ({
    key: key(),
    data: {
      caseId: stranger,
      eventIds: [stranger],
      decision: 'accept',
      reason: 'looked at',
      personId,
      happenedAt: HAPPENED,
    },
  }),
  'joint.step': ({ personId, choice }) => ({
    key: key(),
    seen: null,
    data: {
      step: (choice ?? 'hold') as 'hold',
      jointId: stranger,
      by: personId,
      happenedAt: HAPPENED,
      evidence: {},
    },
  }),
  'deviation.decide': ({ personId }) => ({
    key: key(),
    seen: null,
    data: {
      jointId: stranger,
      deviationId: stranger,
      decision: 'hold',
      reason: 'looked at',
      personId,
      happenedAt: HAPPENED,
    },
  }),
  'classRule.save': () => ({
    ...fresh(),
    data: {
      name: `Class ${randomUUID().slice(0, 8)}`,
      level: 'mild',
      fields: null,
      completeRecord: false,
      witnessPercent: 0,
      loadCheckPercent: 0,
      leakTest: { needed: false, methods: [], words: '' },
      retightening: { afterDwell: false, dwell: 4, duringStartUp: false, words: '' },
      technicianLevel: '',
      signs: [],
      source: 'procedure',
    },
  }),
  'case.close': ({ personId }) => ({
    key: key(),
    data: { caseId: stranger, personId, happenedAt: HAPPENED, conclusion: 'done', measures: '' },
  }),
  'event.sign': ({ personId, choice }) => ({
    key: key(),
    data: {
      eventId: stranger,
      hash: 'a'.repeat(64),
      meaning: (choice ?? 'did') as 'did',
      personId,
    },
    // A wrong one would be counted, and the next ones would have to wait.
    secret: null,
  }),
  'history.export': () => ({}),
  'history.exportPart': () => ({ name: 'history-20260316T120000Z.jsonl', from: 0 }),
  'audit.list': () => ({ group: null, personId: null, from: null, to: null, page: 1, pageSize: 10 }),
  'setting.issue': ({ plant, personId }) => ({
    key: key(),
    data: { ...settingFor(plant), jointId: stranger },
    personId,
  }),
  'event.recordTightening': ({ plant }) => ({ key: key(), data: tighteningOf(plant) }),
  'event.recordBreakout': ({ plant }) => ({ key: key(), data: breakoutOf(plant) }),
  'siteRow.save': () => ({
    key: key(),
    id: stranger,
    version: 1,
    data: {
      kind: 'lubricant',
      key: 'paste',
      source: 'test 1',
      values: {
        nutFactor: { text: '0.15', unit: 'one' },
        nutFactorCv: null,
        frictionThread: null,
        frictionBearing: null,
        evidence: 'measured',
      },
    },
  }),
  'plan.save': () => ({
    key: key(),
    id: stranger,
    version: 1,
    data: {
      name: 'Plan',
      steps: [
        {
          name: 'All',
          fraction: { text: '100', unit: 'percent' },
          order: 'star',
          tools: 1,
          stopWhen: 'no nut turns',
        },
      ],
      groupSize: null,
      checks: [],
      source: 'procedure',
    },
  }),
  'plan.approve': ({ personId }) => ({ key: key(), id: stranger, version: 1, personId }),
  'tableValue.confirm': ({ personId }) => ({
    key: key(),
    data: {
      table: 'no table',
      key: 'no row',
      values: [{ field: 'a', value: 'b' }],
      personId,
      sourceSeen: 'own copy',
    },
  }),
  'import.confirm': ({ choice }) => ({
    key: key(),
    data: {
      kind: choice as 'joints',
      fileName: 'a.csv',
      content: 'YQ==',
      options: {
        encoding: 'utf-8',
        delimiter: ',',
        decimalSign: '.',
        units: { length: 'mm', stress: 'MPa', pressure: 'bar', torque: 'N.m', temperature: 'degC' },
      },
      fingerprint: 'a'.repeat(64),
      leaveOutFaulty: false,
    },
  }),
};
