import { evidenceLevel, leakCause } from '../../../core/contract/leak.ts';
import type { JointStep } from '../../../core/contract/life.ts';
import type { EvidenceField, EvidenceGroup } from './field-kinds.ts';
import { gapRows } from './fields-opening.ts';

const answer = (name: string, label: string): EvidenceField => ({ kind: 'answer', name, label });
const text = (name: string, label: string, hint?: string): EvidenceField =>
  hint === undefined ? { kind: 'text', name, label } : { kind: 'text', name, label, hint };
const long = (name: string, label: string): EvidenceField => ({ kind: 'long', name, label });
const person = (name: string, label: string): EvidenceField => ({ kind: 'person', name, label });
const choice = (name: string, label: string, options: readonly string[]): EvidenceField => ({
  kind: 'choice',
  name,
  label,
  options,
});
const length = (name: string, label: string): EvidenceField => ({
  kind: 'quantity',
  name,
  label,
  quantity: 'length',
  unit: 'mm',
});
const temperature = (name: string, label: string): EvidenceField => ({
  kind: 'quantity',
  name,
  label,
  quantity: 'temperature',
  unit: 'degC',
});

const SOUND = ['not known', 'as it should be', 'not as it should be'];

const causes: EvidenceField = {
  kind: 'list',
  name: 'causes',
  label: 'Causes',
  row: 'cause',
  fields: [
    choice('cause', 'Cause', leakCause.options),
    choice('level', 'How it is known', evidenceLevel.options),
    text('why', 'Why'),
  ],
};

/** From the open joint to service, and what leaks afterwards. */
export const CLOSING_FIELDS: Readonly<Partial<Record<JointStep, readonly EvidenceGroup[]>>> = {
  inspect: [
    {
      legend: 'Result',
      fields: [
        choice('result', 'Result', ['not known', 'fit for assembly', 'not fit for assembly']),
        person('inspectorId', 'Inspected by'),
      ],
    },
    {
      legend: 'Faces',
      fields: [
        {
          kind: 'list',
          name: 'faces',
          label: 'Faces',
          row: 'face',
          start: 2,
          fields: [
            text('name', 'Face', 'Pipe side, valve'),
            choice('verdict', 'Verdict', SOUND),
            answer('damage', 'Damage'),
            length('depth', 'Depth'),
            length('radialExtent', 'Across the face'),
            length('flatness', 'Flatness'),
            answer('rust', 'Rust'),
            text('finish', 'Finish'),
          ],
        },
      ],
    },
    {
      legend: 'Studs, nuts and alignment',
      folded: true,
      fields: [
        answer('studs.runsByHand', 'Every nut runs by hand'),
        answer('studs.galling', 'Galling'),
        answer('studs.necking', 'Necking'),
        answer('studs.corrosion', 'Corrosion'),
        choice('studs.nutFace', 'Bearing face of the nuts', SOUND),
        choice('studs.holes', 'Bolt holes', SOUND),
        { kind: 'bolts', name: 'studs.rejected', label: 'Studs replaced' },
        length('alignment.axialGap', 'Gap between the faces'),
        length('alignment.parallelism', 'Largest less smallest gap'),
        length('alignment.offset', 'Offset of the centre lines'),
        length('alignment.rotation', 'Rotation of the bolt holes'),
        answer('alignment.forceNeeded', 'Force needed to align'),
        {
          kind: 'quantity',
          name: 'alignment.force',
          label: 'Force',
          quantity: 'force',
          unit: 'kN',
        },
        text('alignment.limits', 'Limits held against', 'Whose figures'),
        choice('alignment.verdict', 'Alignment', SOUND),
      ],
    },
  ],
  'make up': [
    {
      legend: 'Gasket',
      fields: [
        choice('gasket.condition', 'Gasket', ['not known', 'new', 'used']),
        answer('gasket.matchesJoint', 'Held against the joint’s data'),
        text('gasket.identity', 'Marking or stock number'),
        text('gasket.batch', 'Batch of the gasket'),
        person('gasket.verifiedBy', 'Gasket verified by'),
      ],
    },
    {
      legend: 'Lubricant, studs and nuts',
      fields: [
        text('lubricant.productClass', 'Lubricant, by its class'),
        text('lubricant.batch', 'Batch of the lubricant'),
        {
          kind: 'ticks',
          name: 'lubricant.appliedTo',
          label: 'Lubricant applied to',
          options: ['threads', 'nut face', 'washer'],
          none: 'nothing',
        },
        person('lubricant.verifiedBy', 'Lubricant verified by'),
        choice('studs.condition', 'Studs', ['not known', 'new', 'used', 'mixed']),
        { kind: 'whole', name: 'studs.useCount', label: 'Tightenings of the studs before' },
        text('studs.batch', 'Batch of the studs'),
        text('studs.certificate', 'Certificate of the studs'),
        text('studs.coating', 'Coating'),
        text('studs.gradeSeen', 'Grade on the studs'),
        text('studs.nutGradeSeen', 'Grade on the nuts'),
        choice('washers', 'Washers', [
          'not known',
          'under both nuts',
          'under the turned nut',
          'none',
          'mixed',
        ]),
      ],
    },
    {
      legend: 'Put together',
      fields: [
        answer('fullEngagement', 'Every nut fully on its thread'),
        { kind: 'bolts', name: 'shortBolts', label: 'Bolts that are short' },
        length('protrusion', 'Least thread beyond the nut'),
        { kind: 'quantity', name: 'snugTorque', label: 'Snug torque', quantity: 'torque', unit: 'N.m' },
        choice('snugBy', 'Snug by', ['not known', 'hand', 'hand wrench', 'machine']),
        choice('turnedSides', 'Sides turned', ['not known', 'one', 'both']),
        { kind: 'lines', name: 'tagSerials', label: 'Serials of the tags', hint: 'With commas' },
      ],
    },
  ],
  witness: [
    {
      legend: 'Witness',
      fields: [
        person('witnessId', 'Witness'),
        choice('result', 'Result', SOUND),
        answer('settingSeen', 'Setting read on the gauge'),
        person('settingSeenBy', 'Setting read by'),
        answer('finalPassNoTurn', 'No nut turned in the last round'),
        { kind: 'bolts', name: 'boltsWitnessed', label: 'Bolts witnessed' },
        person('supervisorId', 'Supervisor'),
      ],
    },
    {
      legend: 'Load and gaps',
      folded: true,
      fields: [
        {
          kind: 'choice',
          name: 'loadMeasurement.method',
          label: 'Load measured by',
          options: ['elongation', 'ultrasonic', 'load-indicating', 'other'],
          blank: 'not measured',
        },
        text('loadMeasurement.instrument', 'Instrument'),
        {
          kind: 'list',
          name: 'loadMeasurement.readings',
          label: 'Loads',
          row: 'bolt',
          fields: [
            { kind: 'whole', name: 'bolt', label: 'Bolt' },
            { kind: 'quantity', name: 'load', label: 'Load', quantity: 'force', unit: 'kN' },
          ],
        },
        { kind: 'list', name: 'gaps', label: 'Gaps', row: 'gap', none: 'looked at, none', fields: gapRows },
        text('seenFrom', 'Hours seen from'),
      ],
    },
  ],
  'relaxation pass': [
    {
      legend: 'Pass',
      fields: [
        {
          kind: 'choice',
          name: 'kind',
          label: 'Kind of pass',
          options: ['after the dwell', 'during start-up'],
          blank: 'Choose the kind',
        },
        {
          kind: 'quantity',
          name: 'dwell',
          label: 'Since the last full pass',
          quantity: 'duration',
          unit: 'h',
        },
        text('procedure', 'Procedure of the site'),
        temperature('boltTemperature', 'Temperature of the bolts'),
        temperature('ambientTemperature', 'Ambient temperature'),
        { kind: 'quantity', name: 'dialled', label: 'Dialled', quantity: 'pressure', unit: 'bar' },
        { kind: 'quantity', name: 'torque', label: 'Torque', quantity: 'torque', unit: 'N.m' },
        { kind: 'quantity', name: 'rotation', label: 'Largest turn', quantity: 'angle', unit: 'deg' },
        { kind: 'bolts', name: 'boltsTurned', label: 'Bolts that turned' },
      ],
    },
  ],
  test: [
    {
      legend: 'Leak test',
      fields: [
        choice('result', 'Result', ['not known', 'passed', 'failed']),
        text('medium', 'Medium'),
        { kind: 'quantity', name: 'pressure', label: 'Pressure', quantity: 'pressure', unit: 'bar' },
        { kind: 'quantity', name: 'hold', label: 'Held for', quantity: 'duration', unit: 'min' },
        choice('method', 'Method', [
          'not known',
          'soap solution',
          'tracer gas',
          'pressure decay',
          'acoustic',
          'sight',
          'other',
        ]),
        text('gauge', 'Gauge'),
        { kind: 'date', name: 'gaugeDueOn', label: 'Gauge in date until' },
        text('pack', 'Test pack'),
        {
          kind: 'long',
          name: 'action',
          label: 'What was done before a repeated test',
        },
      ],
    },
    {
      legend: 'More of the test',
      folded: true,
      fields: [
        { kind: 'quantity', name: 'rate', label: 'Leak rate', quantity: 'leakage', unit: 'mbar.L/s' },
        text('tightnessClass', 'Tightness class'),
        temperature('ambientTemperature', 'Ambient temperature'),
        temperature('metalTemperature', 'Temperature of the metal'),
        { kind: 'whole', name: 'retest', label: 'Which repetition', hint: '0 for the first test' },
      ],
    },
  ],
  reinstate: [
    {
      legend: 'Handed back',
      fields: [
        answer('tagsRemoved', 'Tags removed'),
        answer('blindsRemoved', 'Blinds removed'),
        answer('supportsUnlocked', 'Supports unlocked'),
        answer('guardsBack', 'Guards back'),
        answer('insulationBack', 'Insulation back'),
        answer('isolationLifted', 'Isolation lifted'),
        {
          kind: 'list',
          name: 'punchItems',
          label: 'Punch items',
          row: 'punch item',
          none: 'gone through, none',
          fields: [
            text('text', 'What'),
            choice('state', 'State', ['closed', 'carried over', 'open']),
            text('reference', 'Where it is kept'),
          ],
        },
      ],
    },
  ],
  'enter service': [
    {
      legend: 'In service',
      fields: [{ kind: 'moment', name: 'pressurisedAt', label: 'Under pressure again since' }],
    },
  ],
  'report leak': [
    {
      legend: 'Leak',
      fields: [
        { kind: 'whole', name: 'clock', label: 'Hour on the clock' },
        text('seenFrom', 'Seen from'),
        { kind: 'bolts', name: 'nearBolts', label: 'Near bolts' },
        choice('phase', 'When it leaked', ['not known', 'leak test', 'start-up', 'in service']),
        text('medium', 'Medium'),
        text('rateWords', 'How much', 'Two drops a minute, audible'),
        { kind: 'quantity', name: 'rate', label: 'Leak rate', quantity: 'leakage', unit: 'mbar.L/s' },
        text('method', 'Found by'),
        long('action', 'What was done'),
        causes,
      ],
    },
  ],
  'close leak watch': [
    {
      legend: 'Closed',
      fields: [long('done', 'What was done'), text('checkedHow', 'How it was checked'), causes],
    },
  ],
};
