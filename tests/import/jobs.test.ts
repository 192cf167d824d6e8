import { describe, expect, it } from 'vitest';
import { campaignData, type JobData, jobData } from '../../core/contract/campaign.ts';
import { jointData } from '../../core/contract/joint.ts';
import type { JobLookup } from '../../electron/service/import/lookup.ts';
import { jointA } from '../service/records.ts';
import { jointsByTag, onRegister, readJobs, UNIT_ID } from './files.ts';

const CAMPAIGN_ID = '0198c000-0000-7000-8000-000000000010';
const HEADINGS = 'number,joint,scope,not before,finished by,crews,after,break min';

const identity = { system: 'condensate', testPack: 'TP-7' };
const joint = jointData.parse({ ...jointA(UNIT_ID), identity });

function jobsWith(...existing: JobData[]): JobLookup {
  return {
    campaign: {
      id: CAMPAIGN_ID,
      version: 1,
      data: campaignData.parse({
        name: 'Spring',
        startsAt: '2026-04-01T06:00:00+02:00',
        endsAt: '2026-04-15T18:00:00+02:00',
        crews: [
          { name: 'Day', from: '2026-04-01', to: '2026-04-15', shifts: [{ from: '06:00', to: '18:00' }] },
        ],
      }),
    },
    existing: existing.map((data) => onRegister(data)),
    timeZone: 'Europe/Berlin',
  };
}

const read = (rows: readonly string[], jobs = jobsWith(), headings = HEADINGS) =>
  readJobs([headings, ...rows].join('\n'), { lookup: { joint: jointsByTag(joint), jobs } });

describe('a list of jobs', () => {
  it('is read with times at the site, and takes system and test pack from the joint', () => {
    const { report, records } = read(['N-1,J-0001,break and make,2026-04-02 06:30,2026-04-09,Day,,45']);
    expect(report).toMatchObject({ fileFault: null, faults: [], good: 1, added: 1 });
    expect(records[0]?.data).toMatchObject({
      campaignId: CAMPAIGN_ID,
      number: 'N-1',
      scope: 'break and make',
      earliest: '2026-04-02T06:30:00+02:00',
      latest: '2026-04-10T00:00:00+02:00',
      crews: ['Day'],
      system: 'condensate',
      testPack: 'TP-7',
      breakMinutes: 45,
      makeMinutes: null,
    });
  });

  it('without a campaign is refused as a whole', () => {
    const { report, records } = readJobs(`${HEADINGS}\nN-1,J-0001,make,,,,,`);
    expect(report.fileFault).toBe('Jobs are of a campaign: choose the one this list is for');
    expect(records).toEqual([]);
  });

  it.each<[string, string, string, RegExp]>([
    ['a joint nobody knows', 'N-1,J-9,make,,,,,', 'joint', /tag of a joint on the register/],
    ['no joint', 'N-1,,make,,,,,', 'joint', /needed/],
    ['a scope that does not exist', 'N-1,J-0001,paint,,,,,', 'scope', /one of: break, make/],
    ['no scope', 'N-1,J-0001,,,,,,', 'scope', /needed/],
    ['a day that does not exist', 'N-1,J-0001,make,2026-02-30,,,,', 'not before', /YYYY-MM-DD/],
    [
      'a window that ends before it starts',
      'N-1,J-0001,make,2026-04-09,2026-04-07,,,',
      'finished by',
      /later/,
    ],
    ['a crew nobody knows', 'N-1,J-0001,make,,,Night,,', 'crews', /one of: Day/],
    ['a job before it that nobody knows', 'N-1,J-0001,make,,,,N-7,', 'after', /numbers of jobs/],
    ['itself before it', 'N-1,J-0001,make,,,,N-1,', 'after', /N-1 waits for N-1/],
    ['minutes no work takes', 'N-1,J-0001,make,,,,,1', 'break min', /5 to 4320/],
  ])(
    'with %s names line, column and what is allowed, and keeps the other rows',
    (_, row, column, allowed) => {
      const { report, records } = read([row, 'N-2,J-0001,make,,,,,']);
      expect(report.faults).toEqual([
        { line: 2, column, value: expect.any(String), allowed: expect.stringMatching(allowed) },
      ]);
      expect(records.map(({ data }) => data.number)).toEqual(['N-2']);
    },
  );

  it('with a ring names it at each of its rows; what waited for them falls out, the rest stays', () => {
    const { report, records } = read([
      'N-1,J-0001,make,,,,N-2,',
      'N-2,J-0001,make,,,,N-1,',
      'N-3,J-0001,make,,,,N-2,',
      'N-4,J-0001,make,,,,,',
    ]);
    expect(report.faults.map(({ line, column }) => [line, column])).toEqual([
      [2, 'after'],
      [3, 'after'],
      [4, 'after'],
    ]);
    expect(report.faults[0]?.allowed).toBe('an order without a ring: N-1 waits for N-2 waits for N-1');
    expect(records.map(({ data }) => data.number)).toEqual(['N-4']);
  });

  it('changes what it says and keeps what it has no column for', () => {
    const existing = jobData.parse({
      campaignId: CAMPAIGN_ID,
      number: 'N-1',
      jointId: onRegister(0).id,
      scope: 'make',
      access: 'scaffold',
      remarks: 'north side',
    });
    const jobs = jobsWith(existing);
    const changed = read(['n-1,J-0001,break'], jobs, 'number,joint,scope');
    expect(changed.report).toMatchObject({ changed: 1, added: 0 });
    expect(changed.records[0]?.data).toMatchObject({
      scope: 'break',
      access: 'scaffold',
      remarks: 'north side',
    });
  });
});
