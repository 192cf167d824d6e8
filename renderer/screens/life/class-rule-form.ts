import type { Criticality } from '../../../core/contract/assembly.ts';
import type { ClassRuleData, ClassRuleInput, JointStep } from '../../../core/contract/life.ts';
import type { Role } from '../../../core/contract/roles.ts';
import { RECORD_FIELDS, type RecordField } from '../../../core/record/field-names.ts';
import { FIELDS, requiredFields } from '../../../core/record/fields.ts';

export interface ClassRuleForm {
  name: string;
  level: Criticality | '';
  /** The program's own list of the level, or one of the site's. */
  ownFields: boolean;
  fields: RecordField[];
  completeRecord: boolean;
  witnessPercent: string;
  loadCheckPercent: string;
  testNeeded: boolean;
  testMethods: string[];
  testWords: string;
  afterDwell: boolean;
  dwell: string;
  duringStartUp: boolean;
  retighteningWords: string;
  technicianLevel: string;
  signs: { step: JointStep; roles: Role[] }[];
  source: string;
  retired: boolean;
}

export const EMPTY_RULE: ClassRuleForm = {
  name: '',
  level: '',
  ownFields: false,
  fields: [],
  completeRecord: false,
  witnessPercent: '0',
  loadCheckPercent: '0',
  testNeeded: false,
  testMethods: [],
  testWords: '',
  afterDwell: false,
  dwell: '4',
  duringStartUp: false,
  retighteningWords: '',
  technicianLevel: '',
  signs: [],
  source: '',
  retired: false,
};

export const ruleForm = ({
  fields,
  leakTest,
  retightening,
  witnessPercent,
  loadCheckPercent,
  signs,
  ...rest
}: ClassRuleData): ClassRuleForm => ({
  ...rest,
  ownFields: fields !== null,
  fields: fields ?? requiredFields(rest.level),
  witnessPercent: String(witnessPercent),
  loadCheckPercent: String(loadCheckPercent),
  testNeeded: leakTest.needed,
  testMethods: [...leakTest.methods],
  testWords: leakTest.words,
  afterDwell: retightening.afterDwell,
  dwell: String(retightening.dwell),
  duringStartUp: retightening.duringStartUp,
  retighteningWords: retightening.words,
  signs: signs.map((one) => ({ step: one.step, roles: [...one.roles] })),
});

/** A number that can't be read is sent as typed, to be refused by name. */
const number = (typed: string) =>
  /^\d+(\.\d+)?$/.test(typed.trim()) ? Number(typed) : (typed as unknown as number);

export const ruleInput = (form: ClassRuleForm): ClassRuleInput => ({
  name: form.name,
  level: form.level as Criticality,
  fields: form.ownFields ? RECORD_FIELDS.filter((name) => form.fields.includes(name)) : null,
  completeRecord: form.completeRecord,
  witnessPercent: number(form.witnessPercent),
  loadCheckPercent: number(form.loadCheckPercent),
  leakTest: {
    needed: form.testNeeded,
    methods: form.testMethods as ClassRuleInput['leakTest']['methods'],
    words: form.testWords,
  },
  retightening: {
    afterDwell: form.afterDwell,
    dwell: number(form.dwell),
    duringStartUp: form.duringStartUp,
    words: form.retighteningWords,
  },
  technicianLevel: form.technicianLevel,
  signs: form.signs,
  source: form.source,
  retired: form.retired,
});

/** Where the form keeps the field that a fault is about. */
export const RULE_FAULTS: Readonly<Record<string, string>> = {
  'data.leakTest.words': 'data.testWords',
  'data.leakTest.methods': 'data.testMethods',
  'data.retightening.dwell': 'data.dwell',
  'data.retightening.words': 'data.retighteningWords',
};

/** Fields of the record by group, in the order it is read. */
export const FIELDS_BY_GROUP = Map.groupBy(RECORD_FIELDS, (name) => FIELDS[name].group);
