import type { Confirmation } from '../../core/contract/site.ts';
import { passPlanData } from '../../core/contract/site.ts';
import type { SitePlan } from '../../core/joint/site-tables.ts';

const data = passPlanData.parse({
  name: 'Halves',
  source: 'invented procedure 7',
  groupSize: 3,
  steps: [
    {
      name: 'Half',
      fraction: { text: '1/2', unit: 'one' },
      order: 'groups',
      tools: 1,
      stopWhen: 'it stalls',
    },
    {
      name: 'Full',
      fraction: { text: '1', unit: 'one' },
      order: 'circular',
      tools: 1,
      stopWhen: 'no nut turns',
    },
  ],
  checks: ['gap at four places'],
});

/** A site's plan that nobody has approved. */
export const SITE_PLAN: SitePlan = {
  origin: 'site',
  id: '018f0000-0000-7000-8000-000000000071',
  version: 2,
  data,
  approved: null,
  name: data.name,
  source: data.source,
  steps: [],
  checks: data.checks,
};

/** Yield strength of a grade for which the tables have one source only, as somebody confirmed it. */
export const L7M_CONFIRMED: Confirmation = {
  table: 'ASTM A320/A320M',
  key: 'ASTM A320 L7M | inch | over 0 to 63.5 mm',
  field: 'yield',
  value: '80 ksi',
  person: 'A. Person',
  sourceSeen: 'own copy',
  at: '2026-03-16T09:00:00+01:00',
};
