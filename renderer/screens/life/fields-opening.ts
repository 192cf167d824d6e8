import { fluidHazard } from '../../../core/contract/assembly.ts';
import type { JointStep } from '../../../core/contract/life.ts';
import type { EvidenceField, EvidenceGroup } from './field-kinds.ts';

const answer = (name: string, label: string): EvidenceField => ({ kind: 'answer', name, label });
const text = (name: string, label: string, hint?: string): EvidenceField =>
  hint === undefined ? { kind: 'text', name, label } : { kind: 'text', name, label, hint };
const long = (name: string, label: string): EvidenceField => ({ kind: 'long', name, label });
const person = (name: string, label: string): EvidenceField => ({ kind: 'person', name, label });

export const reason: readonly EvidenceGroup[] = [{ legend: 'Reason', fields: [long('reason', 'Reason')] }];

export const gapRows: readonly EvidenceField[] = [
  { kind: 'whole', name: 'at', label: 'Hour on the clock' },
  { kind: 'quantity', name: 'gap', label: 'Gap', quantity: 'length', unit: 'mm' },
];

/** From the class to the open joint. */
export const OPENING_FIELDS: Readonly<Partial<Record<JointStep, readonly EvidenceGroup[]>>> = {
  assess: [
    {
      legend: 'Basis',
      fields: [
        {
          kind: 'long',
          name: 'basis',
          label: 'Basis of the class',
          hint: 'Procedure and edition, or the reasoning',
        },
        answer('firstAssembly', 'First assembly: nothing to break'),
        text('likelihood', 'Likelihood of a leak'),
        text('consequence', 'Consequence of a leak'),
        { kind: 'date', name: 'reviewBy', label: 'To be looked at again by' },
      ],
    },
    {
      legend: 'What it rests on',
      folded: true,
      fields: [
        {
          kind: 'ticks',
          name: 'fluidHazards',
          label: 'Hazards of the fluid',
          options: fluidHazard.options,
          none: 'none of them',
        },
        answer('highTemperature', 'High temperature'),
        answer('highPressure', 'High pressure'),
        answer('cyclic', 'Cyclic service'),
        { kind: 'whole', name: 'cyclesPerYear', label: 'Cycles in the year before' },
        answer('vibration', 'Vibration'),
        answer('externalLoad', 'Load of the pipe on the joint'),
        answer('gasketRelaxes', 'Gasket that relaxes'),
        answer('hasLeaked', 'Has leaked before'),
        answer('hardToReach', 'Hard to reach'),
        answer('peopleNearby', 'People nearby'),
        answer('insulated', 'Insulated'),
        text('inspectionLevel', 'Level of inspection'),
        text('hotWork', 'Hot work, in the words of the site’s procedure'),
      ],
    },
  ],
  'declare in service': [
    {
      legend: 'In service',
      fields: [
        { kind: 'long', name: 'basis', label: 'What says so', hint: 'Survey, earlier register, handover' },
        { kind: 'date', name: 'since', label: 'In service since' },
      ],
    },
  ],
  schedule: [
    {
      legend: 'Work',
      fields: [
        text('workOrder', 'Work order'),
        { kind: 'date', name: 'plannedFor', label: 'Planned for' },
        long('reason', 'Reason'),
      ],
    },
  ],
  unschedule: reason,
  isolate: [
    {
      legend: 'Isolation',
      fields: [
        text('isolationRef', 'Reference of the isolation'),
        text('boundary', 'Isolation boundary'),
        {
          kind: 'choice',
          name: 'method',
          label: 'Method',
          options: [
            'not known',
            'blind or spade',
            'disconnected',
            'double block and bleed',
            'single valve',
            'other',
          ],
        },
        {
          kind: 'lines',
          name: 'points',
          label: 'Points',
          hint: 'Valves, blinds and breakers by number, with commas',
        },
        answer('locked', 'Locked'),
        answer('drained', 'Drained'),
        answer('vented', 'Vented'),
        answer('purged', 'Purged'),
        answer('proven', 'Proven'),
        person('provenBy', 'Proven by'),
        text('provenHow', 'Proven how'),
      ],
    },
  ],
  'lift isolation': [
    {
      legend: 'Lifted',
      fields: [text('isolationRef', 'Reference of the isolation'), text('liftedBy', 'Lifted by')],
    },
  ],
  release: [
    {
      legend: 'Which joint this is: two checks at the joint',
      fields: [
        {
          kind: 'list',
          name: 'identityChecks',
          label: 'Identity checks',
          row: 'check',
          start: 2,
          fields: [
            person('personId', 'Checked by'),
            {
              kind: 'choice',
              name: 'how',
              label: 'How',
              options: ['not known', 'tag scanned', 'tag read', 'drawing and landmark'],
            },
            text('tagSeen', 'Tag as seen'),
            text('sideSeen', 'Side as seen'),
            { kind: 'moment', name: 'checkedAt', label: 'When' },
          ],
        },
      ],
    },
    {
      legend: 'Free of energy',
      fields: [
        answer('zeroEnergyProven', 'Zero energy proven at this joint'),
        person('provenBy', 'Proven by'),
        text('provenHow', 'Proven how'),
        answer('supportsLocked', 'Supports locked'),
      ],
    },
    {
      legend: 'Permit',
      fields: [
        text('permitRef', 'Reference of the permit'),
        { kind: 'moment', name: 'permitUntil', label: 'Permit until' },
        text('isolationRef', 'Isolation it rests on'),
      ],
    },
  ],
  break: [
    {
      legend: 'Opened',
      fields: [
        answer('zeroEnergyProven', 'Zero energy proven once more'),
        text('permitRef', 'Reference of the permit'),
        text('isolationRef', 'Reference of the isolation'),
        { kind: 'bolts', name: 'seizedBolts', label: 'Seized bolts' },
        { kind: 'bolts', name: 'cutBolts', label: 'Cut bolts' },
        text('openedSide', 'Side that opened first'),
      ],
    },
    {
      legend: 'What the joint showed',
      folded: true,
      fields: [
        {
          kind: 'date',
          name: 'lastBrokenOn',
          label: 'Broken before this on',
          hint: 'Where the register does not know it',
        },
        {
          kind: 'list',
          name: 'firstMovement',
          label: 'First movement',
          row: 'bolt',
          none: 'looked at, none moved',
          fields: [
            { kind: 'whole', name: 'bolt', label: 'Bolt' },
            { kind: 'quantity', name: 'angle', label: 'Angle', quantity: 'angle', unit: 'deg' },
          ],
        },
        {
          kind: 'list',
          name: 'gaps',
          label: 'Gaps, bolts slack',
          row: 'gap',
          none: 'looked at, none',
          fields: gapRows,
        },
        text('seenFrom', 'Hours seen from'),
        { kind: 'quantity', name: 'flangeSpring', label: 'Flanges moved by', quantity: 'length', unit: 'mm' },
        text('springDirection', 'Flanges moved which way'),
        answer('residue', 'Residue found'),
        text('residueFound', 'What was found'),
      ],
    },
  ],
  hold: [
    {
      legend: 'Hold',
      fields: [
        long('reason', 'Reason'),
        text('defect', 'Defect'),
        text('where', 'Where'),
        text('clearedBy', 'Who may clear it', 'By the site’s procedure'),
      ],
    },
  ],
  'clear hold': [
    { legend: 'Cleared', fields: [long('reason', 'Reason'), long('repair', 'What was repaired')] },
  ],
};
