import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { RequestName } from '../../core/contract/names.ts';
import type { RequestInput, RequestOutput } from '../../core/contract/requests.ts';
import { readImport } from '../../electron/service/import/read.ts';
import { createService, type Service } from '../../electron/service/service.ts';
import { type Measured, measure } from './measure.ts';

const MS = 1000;

/** A list of 10,000 joints, read and checked against an empty register. */
export function importBench(): Promise<Measured> {
  const heading =
    'tag,unit,location,service,service temperature,flange standard,size,class,facing,stud grade,gasket,gasket thickness,lubricant,nut factor,friction evidence,target mode,target value,target area,target basis';
  const rows = Array.from(
    { length: 10_000 },
    (_, index) =>
      `J-${index},Unit ${index % 12},"pump P-${index}, outlet",crude oil,180,ASME B16.5,8,300,raised face,ASTM A193 B7,spiral wound,4.5,nickel-based anti-seize,0.16,measured,percent of yield,50,tensile,invented`,
  );
  const content = Buffer.from([heading, ...rows].join('\n'), 'utf8').toString('base64');
  const options = {
    encoding: 'utf-8',
    delimiter: ',',
    decimalSign: '.',
    units: { length: 'mm', stress: 'MPa', pressure: 'bar', torque: 'N.m', temperature: 'degC' },
  } as const;
  const lookup = {
    unitId: () => null,
    joint: () => null,
    tool: () => null,
    certificate: () => null,
    today: '2026-03-16',
    toolWithSerial: () => null,
    jobs: null,
  };
  return measure(
    {
      name: 'Import preview',
      what: 'a joint list of 10,000 rows, read and checked',
      unit: 'ms',
      rounds: 5,
      figure: (seconds) => seconds * MS,
      better: 'less',
    },
    () => {
      const { report } = readImport(
        { kind: 'joints', fileName: 'list.csv', content, options, campaignId: null },
        lookup,
      );
      if (report.good !== rows.length) throw new Error(`only ${report.good} rows were read as good`);
    },
  );
}

/** Cards by request on the invented plant's register, and the making of that register. */
export async function serviceBenches(): Promise<Measured[]> {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-bench-'));
  try {
    const made = await measure(
      {
        name: 'Invented plant',
        what: 'a new register filled with the invented plant, every record through the checks of real work',
        unit: 's',
        rounds: 2,
        figure: (seconds) => seconds,
        better: 'less',
      },
      () => withPlant(mkdtempSync(join(folder, 'made-')), async () => undefined),
    );
    const card = await withPlant(mkdtempSync(join(folder, 'asked-')), cardBench);
    return [made, card];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function withPlant<T>(folder: string, work: (service: Service) => Promise<T>): Promise<T> {
  const service = createService({
    folder,
    clock: () => new Date('2026-11-25T12:00:00Z'),
    log: (level, message, error) => {
      if (level === 'error') throw new Error(message, { cause: error });
    },
  });
  try {
    await ask(service, 'register.create', { key: randomUUID(), data: { content: 'demo' } });
    return await work(service);
  } finally {
    await service.close();
  }
}

async function cardBench(service: Service): Promise<Measured> {
  const page = { page: 1, pageSize: 200 } as const;
  const { rows } = await ask(service, 'setting.list', { jointId: null, ...page });
  const issued = await Promise.all(rows.map(({ id }) => ask(service, 'setting.get', { id })));
  return measure(
    {
      name: 'Card by request',
      what: `setting.compute through the service, register of the invented plant, mean of ${issued.length}`,
      unit: 'ms',
      rounds: 10,
      figure: (seconds) => (seconds * MS) / issued.length,
      better: 'less',
    },
    async () => {
      for (const { input } of issued) await ask(service, 'setting.compute', input);
    },
  );
}

async function ask<N extends RequestName>(
  service: Service,
  name: N,
  input: RequestInput<N>,
): Promise<RequestOutput<N>> {
  const answer = await service.handle(name, input);
  if (!answer.ok) throw new Error(`${name}: ${JSON.stringify(answer.error)}`);
  return answer.value as RequestOutput<N>;
}
