import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { ForecastRun } from '../../core/contract/forecast-list.ts';
import { jointData } from '../../core/contract/joint.ts';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { createService, type Service } from '../../electron/service/service.ts';
import { jointA } from '../service/records.ts';
import { askService } from './ask.ts';
import { type Measured, onTheClock } from './measure.ts';

const JOINTS = 100_000;
/** Every third joint was opened once. */
const OPENED_EVERY = 3;
const READINGS = 4;
const SERVICES = ['steam', 'condensate', 'naphtha', 'amine', 'fuel gas', 'crude', 'water', 'hydrogen'];
const SIZES = ['2', '3', '4', '6', '8', '10', '12', '16'];
const ROUNDS = 2;

const idOf = (kind: number, n: number) => `00000000-0000-7000-800${kind}-${String(n).padStart(12, '0')}`;

/** Forecasts of 100,000 joints through the service, and how soon a run ends that is cancelled. */
export async function forecastBenches(): Promise<Measured[]> {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-forecasts-'));
  try {
    const database = new Database(join(folder, 'register.sqlite'));
    await migrate(database, queryBuilder(database));
    database.pragma('synchronous = OFF');
    fill(database);
    database.close();
    const service = createService({
      folder,
      clock: () => new Date('2026-11-25T12:00:00Z'),
      log: (level, message, error) => {
        if (level === 'error') throw new Error(message, { cause: error });
      },
    });
    try {
      const whole: number[] = [];
      const cancelled: number[] = [];
      for (let round = 0; round < ROUNDS; round += 1) {
        whole.push(await runOnce(service));
        cancelled.push(await cancelOnce(service));
      }
      const size = `${JOINTS.toLocaleString('en')} joints, a third of them opened once`;
      return [
        onTheClock(
          'Forecasts of all joints',
          `forecasts.start of ${size}, to its end, time on the clock`,
          's',
          whole,
          60,
        ),
        onTheClock(
          'Forecasts cancelled',
          'from the request to its answer, time on the clock',
          's',
          cancelled,
          1,
        ),
      ];
    } finally {
      await service.close();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function runOnce(service: Service): Promise<number> {
  const start = performance.now();
  let run: ForecastRun | null = await askService(service, 'forecasts.start', {});
  const seen = new Set<number>();
  while (run?.state === 'running') {
    await new Promise((resolve) => setTimeout(resolve, 100));
    run = await askService(service, 'forecasts.run', { id: run.id });
    seen.add(run?.done ?? 0);
  }
  const seconds = (performance.now() - start) / 1000;
  if (run?.state !== 'done' || run.done !== JOINTS) throw new Error(`the run ended ${JSON.stringify(run)}`);
  if (seen.size < 10) throw new Error(`progress was told ${seen.size} times only`);
  const page = { sort: 'worst', direction: 'desc', page: 1, pageSize: 20 } as const;
  const { rows } = await askService(service, 'forecasts.rows', { id: run.id, ...page });
  if (rows.some(({ worst }) => worst === null || !Number.isFinite(worst)))
    throw new Error('a row says nothing');
  return seconds;
}

async function cancelOnce(service: Service): Promise<number> {
  const { id } = await askService(service, 'forecasts.start', {});
  await new Promise((resolve) => setTimeout(resolve, 1500));
  const start = performance.now();
  const { state } = await askService(service, 'forecasts.cancel', { id });
  if (state !== 'cancelled') throw new Error(`it was ${state}, not cancelled`);
  return (performance.now() - start) / 1000;
}

/** Bulk inserts through the real schema, its checks and triggers. */
function fill(database: Database.Database): void {
  const place = idOf(0, 1);
  const put = (table: string, columns: string) => {
    const names = columns.split(' ');
    const statement = database.prepare(
      `insert into ${table} (${names.join(', ')}) values (${names.map(() => '?').join(', ')})`,
    );
    return (...values: unknown[]) => statement.run(...values);
  };
  const joint = put(
    'joint',
    'id unit_id version tag tag_key tag_sort location service service_sort flange bolting search data last_event_kind last_event_at last_event_at_utc',
  );
  const event = put(
    'event',
    'id origin_id sequence previous_hash hash body body_version kind happened_at happened_at_utc recorded_at',
  );
  const tightening = put(
    'tightening',
    'id joint_id happened_at happened_at_utc flags bolts_tightened final_pass_no_turn dialled_text dialled_unit dialled_pa torque_nm basis',
  );
  const breakout = put(
    'breakout',
    'id joint_id happened_at happened_at_utc flags readings not_turned torque_nm highest_nm',
  );
  const reading = put('breakout_reading', 'breakout_id bolt outcome torque_text torque_unit torque_nm basis');
  const data = SIZES.map((size) =>
    SERVICES.map((service) => {
      const flange = {
        kind: 'standard',
        standard: 'ASME B16.5',
        size,
        rating: '300',
        facing: 'raised face',
      } as const;
      const blank = { count: null, thread: null, circle: null };
      const invented = jointA(place, 'J');
      const bolting = { ...invented.bolting, ...blank };
      return JSON.stringify(jointData.parse({ ...invented, flange, service, bolting }));
    }),
  );
  const ON = '2023-04-01T08:00:00.000Z';
  const OPENED = '2025-04-01T08:00:00.000Z';
  const AGAIN = '2025-04-03T08:00:00.000Z';
  let sequence = 0;
  const record = (n: number, kind: string, at: string) => {
    sequence += 1;
    const id = idOf(1, sequence);
    const hash = (of: number) => of.toString(16).padStart(64, '0');
    event(id, place, sequence, hash(sequence - 1), hash(sequence), `{"number":${n}}`, 1, kind, at, at, at);
    return id;
  };
  const tighten = (n: number, at: string) =>
    tightening(
      record(n, 'tightening recorded', at),
      idOf(3, n),
      at,
      at,
      '[]',
      12,
      1,
      '260',
      'bar',
      260e5,
      384,
      'invented',
    );
  database.transaction(() => {
    put('origin', 'id name created_at')(place, 'bench', ON);
    put('site', 'id name time_zone demo')(place, 'bench', 'Europe/Berlin', 1);
    put('plant_unit', 'id site_id version name name_key')(place, place, 1, 'Unit', 'unit');
    for (let n = 0; n < JOINTS; n += 1) {
      const service = SERVICES[n % SERVICES.length] ?? '';
      const text = data[Math.floor(n / 7) % SIZES.length]?.[n % SERVICES.length] ?? '';
      joint(
        idOf(3, n),
        place,
        1,
        `J-${n}`,
        `j-${n}`,
        `j-${n}`,
        '',
        service,
        service,
        'invented',
        '',
        '',
        text,
        'tightening',
        ON,
        ON,
      );
      tighten(n, ON);
      if (n % OPENED_EVERY !== 0) continue;
      const id = record(n, 'breakout recorded', OPENED);
      const torques = Array.from({ length: READINGS }, (_, bolt) => 300 + ((n * 37 + bolt * 91) % 240));
      breakout(id, idOf(3, n), OPENED, OPENED, '[]', READINGS, 0, torques[0], Math.max(...torques));
      for (const [bolt, torque] of torques.entries()) {
        reading(id, bolt + 1, 'turned', String(torque), 'N.m', torque, 'entered');
      }
      tighten(n, AGAIN);
    }
  })();
}
