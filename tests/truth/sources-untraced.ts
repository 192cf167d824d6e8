import type { Source } from './source.ts';

/** Sheets, pages and arithmetic that nobody can look up: checked, never counted. */
export const UNTRACED = {
  'own-arithmetic': {
    title: 'Arithmetic by an independent script or by hand',
    author: 'this project',
    edition: 'not published',
    grade: 'C',
    read: 'not published',
  },
  'pcc-1-sheet': {
    title: 'Calculation sheet for PCC-1, Appendix O, 24 × M20, 10 bar',
    author: 'not recorded',
    edition: 'not stated',
    grade: 'C',
    read: 'public document site',
  },
  'ring-joint-sheet': {
    title: 'Flange calculation sheet, ring joint, 12 038 psi',
    author: 'not recorded',
    edition: 'not stated',
    grade: 'C',
    read: 'public document site',
  },
  'stretch-example': {
    title: 'Worked stretch example',
    author: 'not recorded',
    edition: 'not stated',
    grade: 'C',
    read: 'second-hand',
  },
  'vessel-blog': {
    title: 'Blog example of Appendix 2 bolt loads, NPS 10, 250 psi',
    author: 'not recorded',
    edition: 'not stated',
    grade: 'C',
    read: 'web page',
  },
  'vessel-printout': {
    title: 'Vessel calculation printout, ASME VIII-1, 2017 edition',
    author: 'not recorded',
    edition: 'not stated',
    grade: 'C',
    read: 'public document site',
  },
  'vessel-sample': {
    title: 'Published sample calculation of an engineering office: Sample 5, Vessel with Large Opening',
    author: 'not recorded',
    edition: '20 November 2008; ASME VIII-1 of 2007',
    grade: 'C',
    read: 'at third hand',
  },
  'worked-joint-a': {
    title: 'Worked joint A, arithmetic by an independent script',
    author: 'this project',
    edition: 'not published',
    grade: 'C',
    read: 'not published',
  },
  'worked-joint-b': {
    title: 'Worked joint B, arithmetic by an independent script',
    author: 'this project',
    edition: 'not published',
    grade: 'C',
    read: 'not published',
  },
  'eight-bolt-case': {
    title: 'Elastic interaction of eight bolts by coefficients, worked by hand',
    author: 'this project',
    edition: 'not published',
    grade: 'C',
    read: 'not published',
  },
} as const satisfies Readonly<Record<string, Source>>;
