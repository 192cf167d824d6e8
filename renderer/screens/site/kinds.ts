import type { SiteRowKind } from '../../../core/contract/site.ts';

/** The site's tables in the order of the page, with the path each has in an address. */
export const KINDS: readonly {
  readonly kind: SiteRowKind;
  readonly path: string;
  readonly heading: string;
  readonly noun: string;
}[] = [
  { kind: 'flange', path: 'flange', heading: 'Flanges', noun: 'flange' },
  { kind: 'stud grade', path: 'grade', heading: 'Stud grades', noun: 'stud grade' },
  { kind: 'gasket', path: 'gasket', heading: 'Gaskets', noun: 'gasket' },
  { kind: 'lubricant', path: 'lubricant', heading: 'Lubricants', noun: 'lubricant' },
];
