import { checklistData, toolRuleData } from '../../core/contract/check.ts';
import type { FindingCode } from '../../core/findings/codes.ts';
import type { ToolFacts } from '../../core/tools/facts.ts';
import { typed } from '../truth/entered.ts';
import type { InputDraft } from './complete-input.ts';
import type { Case } from './finding-case.ts';
import { chosen } from './finding-parts.ts';

/** A rule of the site that asks nothing but what is changed. */
export function siteRule(input: InputDraft, changes: object): void {
  const rule = {
    class: 'drive unit',
    certificateDays: null,
    certificateUses: null,
    dueAt: 'exact day',
    source: 'site procedure 7, edition 2',
    ...changes,
  };
  input.toolRoom.rules.push(toolRuleData.parse(rule));
}

/** The drive unit's past, with nothing in it but what is changed. */
export function driveFacts(input: InputDraft, changes: Partial<ToolFacts>): void {
  const facts: ToolFacts = {
    toolId: chosen(input, 'drive').id,
    uses: { total: 0, sinceCertificate: 0 },
    checks: [],
    openCases: [],
    overload: null,
    kits: [],
    ...changes,
  };
  input.toolRoom.facts.push(structuredClone(facts) as InputDraft['toolRoom']['facts'][number]);
}

export const SEAL_LIST = '018f0000-0000-7000-8000-000000000091';

export function sealList(input: InputDraft, changes: object = {}): void {
  input.toolRoom.checklists.push({
    id: SEAL_LIST,
    data: checklistData.parse({
      name: 'Seal inspection',
      kind: 'seal inspection',
      classes: ['drive unit'],
      questions: [{ text: 'Seals dry', answer: 'yes or no' }],
      source: 'instructions of the tool, edition 3',
      everyDays: 30,
      everyUses: null,
      ...changes,
    }),
  });
}

const FURTHER_IDS = {
  drive: '018f0000-0000-7000-8000-000000000041',
  cassette: '018f0000-0000-7000-8000-000000000042',
  hose: '018f0000-0000-7000-8000-000000000045',
  certificate: '018f0000-0000-7000-8000-000000000046',
};

/** A second wrench on the pump, of the same kind as the first; its certificate gives `factor` times the torque. */
export function secondWrench(input: InputDraft, factor = 1): InputDraft['set']['further'][number] {
  chosen(input, 'pump').data.properties.connections = 2;
  const wrench = structuredClone({
    drive: chosen(input, 'drive'),
    cassette: chosen(input, 'cassette'),
    reducers: input.set.reducers,
    hoses: input.set.hoses,
  });
  const [hose] = wrench.hoses;
  const [certificate] = wrench.drive.certificates;
  if (hose === undefined || certificate?.data.measured.kind !== 'pressure-torque') {
    throw new Error('fixture: no hose or certificate');
  }
  wrench.drive.id = FURTHER_IDS.drive;
  wrench.drive.data.number = 'D-05';
  wrench.cassette.id = FURTHER_IDS.cassette;
  wrench.cassette.data.number = 'C-12';
  hose.id = FURTHER_IDS.hose;
  hose.data.number = 'H-23';
  certificate.id = FURTHER_IDS.certificate;
  Object.assign(certificate.data, {
    number: '119',
    toolId: wrench.drive.id,
    withToolIds: [wrench.cassette.id],
  });
  for (const point of certificate.data.measured.points) {
    point.torque = typed(String(point.torque.si * factor), 'N.m');
  }
  input.set.further.push(wrench);
  return wrench;
}

export const TOOL_ROOM_CASES = {
  coupling_unknown: {
    severity: 'note',
    change: (input) => {
      chosen(input, 'pump').data.properties.coupling = '';
    },
  },
  reaction_unknown: {
    severity: 'note',
    change: (input) => {
      chosen(input, 'cassette').data.properties.reactionArm = null;
    },
  },
  line_agreement_unknown: {
    severity: 'refusal',
    change: (input) => {
      secondWrench(input);
    },
  },
  stud_wider_than_bore: {
    severity: 'refusal',
    change: (input) => {
      chosen(input, 'cassette').data.properties.bore = typed('22', 'mm');
    },
  },
  stud_hits_head: {
    severity: 'refusal',
    change: (input) => {
      Object.assign(chosen(input, 'cassette').data.properties, {
        openThrough: false,
        studRoom: typed('6', 'mm'),
      });
    },
  },
  head_too_high: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.space.axialGap = typed('69', 'mm');
    },
  },
  counterhold_missing: {
    severity: 'note',
    change: (input) => {
      input.set.counterhold = null;
    },
  },
  counterhold_does_not_fit: {
    severity: 'refusal',
    change: (input) => {
      chosen(input, 'counterhold').data.properties.acrossFlats = typed('36', 'mm');
    },
  },
  coupling_differs: {
    severity: 'refusal',
    change: (input) => {
      chosen(input, 'drive').data.properties.coupling = 'S2';
    },
  },
  pump_connections_few: {
    severity: 'refusal',
    change: (input) => {
      secondWrench(input);
      chosen(input, 'pump').data.properties.connections = 1;
    },
  },
  lines_disagree: {
    severity: 'refusal',
    change: (input) => {
      secondWrench(input, 1.04);
      siteRule(input, { lineAgreement: typed('3', 'percent') });
    },
  },
  gauge_second_unit: {
    severity: 'warning',
    change: (input) => {
      chosen(input, 'gauge').data.properties.alsoPrinted = 'psi';
    },
  },
  tool_due: {
    severity: 'warning',
    change: (input) => {
      sealList(input);
    },
  },
  tool_in_case: {
    severity: 'refusal',
    change: (input) => {
      driveFacts(input, { openCases: [{ id: 'a case', number: 'CA-0003' }] });
    },
  },
  kit_reserved: {
    severity: 'warning',
    change: (input) => {
      const kit = {
        id: 'a kit',
        name: 'Unit 300',
        jointIds: ['another joint'],
        from: '2026-03-17',
        to: '2026-03-20',
      };
      driveFacts(input, { kits: [kit] });
    },
  },
} satisfies Partial<Record<FindingCode, Case>>;
