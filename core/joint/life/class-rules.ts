import type { Criticality } from '../../contract/assembly.ts';
import type { ClassRuleData } from '../../contract/life.ts';

const SOURCE =
  'assumption of this program to start from; the classes are common practice, their outcomes are the site’s to set';

const NO_TEST = { needed: false, methods: [], words: '' };
const ANY_TEST = { needed: true, methods: [], words: '' };
const NO_RETIGHTENING = { afterDwell: false, dwell: 4, duringStartUp: false, words: '' };

/** Rules that come with the program, for levels a site has no rule of its own for. */
export const CLASS_RULES: Readonly<Record<Criticality, ClassRuleData>> = {
  mild: {
    name: 'mild',
    level: 'mild',
    fields: null,
    completeRecord: false,
    witnessPercent: 0,
    loadCheckPercent: 0,
    leakTest: NO_TEST,
    retightening: NO_RETIGHTENING,
    technicianLevel: '',
    signs: [],
    source: SOURCE,
    retired: false,
  },
  intermediate: {
    name: 'intermediate',
    level: 'intermediate',
    fields: null,
    completeRecord: false,
    witnessPercent: 10,
    loadCheckPercent: 0,
    leakTest: ANY_TEST,
    retightening: NO_RETIGHTENING,
    technicianLevel: '',
    signs: [{ step: 'reinstate', roles: ['planner', 'engineer'] }],
    source: SOURCE,
    retired: false,
  },
  critical: {
    name: 'critical',
    level: 'critical',
    fields: null,
    completeRecord: true,
    witnessPercent: 100,
    loadCheckPercent: 10,
    leakTest: ANY_TEST,
    retightening: {
      afterDwell: true,
      dwell: 4,
      duringStartUp: false,
      words: 'after at least 4 h (ASME PCC-1, from memory)',
    },
    technicianLevel: '',
    signs: [{ step: 'reinstate', roles: ['engineer'] }],
    source: SOURCE,
    retired: false,
  },
};
