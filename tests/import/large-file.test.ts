import { expect, it } from 'vitest';
import { readJoints } from './files.ts';

const HEADINGS =
  'tag,unit,location,service,service temperature,flange standard,size,class,facing,stud grade,gasket,gasket thickness,lubricant,nut factor,friction evidence,target mode,target value,target area,target basis';

function lines(count: number): string[] {
  return Array.from(
    { length: count },
    (_, index) =>
      `J-${index},Unit ${index % 12},"pump P-${index}, outlet",crude oil,180,ASME B16.5,8,300,raised face,ASTM A193 B7,spiral wound,4.5,nickel-based anti-seize,0.16,measured,percent of yield,50,tensile,BP-04`,
  );
}

it('10,000 joints with one bad row: one fault, and every other row beside it', () => {
  const rows = lines(10_000);
  rows[6543] = (rows[6543] ?? '').replace(',4.5,', ',4.5 mm,');
  const text = [HEADINGS, ...rows].join('\n');
  const start = process.threadCpuUsage();
  const { report, records, newUnits } = readJoints(text);
  const used = process.threadCpuUsage(start);
  expect(report).toMatchObject({
    fileFault: null,
    rows: 10_000,
    good: 9_999,
    added: 9_999,
    faultyRows: 1,
    faultCount: 1,
    faults: [
      {
        line: 6545,
        column: 'gasket thickness',
        value: '4.5 mm',
        allowed: 'a number alone; this column is in mm, as chosen for the file',
      },
    ],
  });
  expect(records).toHaveLength(9_999);
  expect(newUnits).toHaveLength(12);
  // A preview a person waits for: about 0.6 s when nothing else runs. Processor time, since the suite runs beside it.
  expect((used.user + used.system) / 1e6).toBeLessThan(3);
});

it('10,000 bad rows: all counted, a screenful shown', () => {
  const { report, records } = readJoints(
    [HEADINGS, ...lines(10_000).map((row) => row.replace('raised', 'risen'))].join('\n'),
  );
  expect(report).toMatchObject({ good: 0, faultyRows: 10_000, faultCount: 10_000 });
  expect(report.faults).toHaveLength(200);
  expect(records).toEqual([]);
});
