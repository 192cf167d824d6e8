import type { Column } from './column.ts';

const optional = { needed: false } as const;

/** Headings of a job list: one job a row, of the campaign chosen for the file. */
export const JOB_COLUMNS: readonly Column[] = [
  {
    heading: 'number',
    needed: true,
    meaning: 'The job’s own number. A number the campaign has already changes that job',
    example: 'N-101',
  },
  { heading: 'joint', needed: true, meaning: 'Tag of a joint on the register', example: 'J-0104' },
  { heading: 'scope', needed: true, meaning: 'break, make, or break and make', example: 'break and make' },
  {
    heading: 'bolt set',
    ...optional,
    meaning: 'Which of the joint’s bolt sets; blank or 0 for its own bolting, 1 for the first further one',
    example: '0',
  },
  { heading: 'temporary', ...optional, meaning: 'yes for a joint closed for a time only', example: 'no' },
  { heading: 'work order', ...optional, meaning: 'Number of the site’s order', example: '40012' },
  { heading: 'system', ...optional, meaning: 'Blank takes the joint’s own', example: 'condensate' },
  { heading: 'test pack', ...optional, meaning: 'Blank takes the joint’s own', example: 'TP-12' },
  {
    heading: 'not before',
    ...optional,
    meaning: 'Date, or date and time at the site; blank is the campaign’s start',
    example: '2026-04-02 06:00',
  },
  {
    heading: 'finished by',
    ...optional,
    meaning: 'Date, whose end is meant, or date and time at the site; blank is the campaign’s end',
    example: '2026-04-09',
  },
  { heading: 'isolation', ...optional, meaning: 'Reference of the isolation', example: 'ISO-7' },
  { heading: 'permit', ...optional, meaning: 'Reference of the permit', example: 'PTW-31' },
  { heading: 'access', ...optional, meaning: 'What has to be there to reach it', example: 'scaffold, 4 m' },
  { heading: 'crews', ...optional, meaning: 'Crews that may do it, with ; between', example: 'Day; Night' },
  {
    heading: 'after',
    ...optional,
    meaning: 'Numbers of jobs to be finished before, with ; between',
    example: 'N-99',
  },
  {
    heading: 'work between min',
    ...optional,
    meaning: 'Minutes between breaking and making; blank is none',
    example: '240',
  },
  {
    heading: 'break min',
    ...optional,
    meaning: 'Minutes to break it; blank takes the table of durations',
    example: '60',
  },
  {
    heading: 'make min',
    ...optional,
    meaning: 'Minutes to make it up; blank takes the table of durations',
    example: '120',
  },
  { heading: 'dropped', ...optional, meaning: 'yes takes it out of the scope', example: 'no' },
  { heading: 'remarks', ...optional, meaning: 'Anything else', example: 'north side' },
];
