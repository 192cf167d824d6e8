import { afterAll, beforeAll, expect, it } from 'vitest';
import type { RecallView } from '../../core/contract/recall.ts';
import { resolveJoint } from '../../core/joint/resolve.ts';
import { WEAK_WRENCH } from '../../seed/faults.ts';
import { demoPlant } from '../../seed/plant.ts';
import type { DemoCertificate, DemoTightening } from '../../seed/types.ts';
import { ask, key, startService, type TestService } from '../service/ask.ts';
import { temporaryFolder } from '../service/folder.ts';
import { jointByTag, jointOf } from './parsed.ts';

// Everything expected here is worked out from the raw points of the invented certificates by plain arithmetic: normal
// equations for the line (JCGM 100:2008, H.3), straight lines between a gauge's points, F = T/(K·D). Of the program only
// the joint's thread and nut are taken; nothing of its calibration or recall.

const NOW = '2026-11-25T12:00:00Z';
const TODAY = '2026-11-25';
/** 1 lbf = 4.4482216152605 N and 1 in = 25.4 mm, both exact by definition. */
const PASCAL: Readonly<Record<string, number>> = { bar: 1e5, psi: 4.4482216152605 / 0.0254 ** 2 };

const plant = demoPlant({ today: TODAY });
const certificates = plant.certificates.filter(({ tool }) => tool === WEAK_WRENCH);
const [good, failing] = certificates.slice(-2);

const pascals = ({ text, unit }: { readonly text: string; readonly unit: string }) =>
  Number(text) * (PASCAL[unit] ?? Number.NaN);

type Points = readonly (readonly [number, number])[];

function torquePoints(measured: DemoCertificate['measured'] | null | undefined): Points {
  if (measured?.kind !== 'pressure-torque') throw new Error('not points of a wrench');
  return measured.points.map(({ pressure, torque }) => {
    expect(torque.unit).toBe('N.m');
    return [pascals(pressure), Number(torque.text)] as const;
  });
}

/** y at x on the straight line through points, by the normal equations. */
function onLine(points: Points, at: number): number {
  const n = points.length;
  const meanX = points.reduce((sum, [x]) => sum + x, 0) / n;
  const meanY = points.reduce((sum, [, y]) => sum + y, 0) / n;
  const xy = points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0);
  const xx = points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  return meanY + (xy / xx) * (at - meanX);
}

/** True pressure behind what the gauge showed, by its certificate in force that day; as shown where its points say nothing. */
function truePressure(gauge: string | null, indicated: number, day: string): number {
  const own = plant.certificates.findLast(({ tool, calibratedOn }) => tool === gauge && calibratedOn <= day);
  if (own?.measured.kind !== 'gauge') throw new Error('no certificate of the gauge');
  const points = own.measured.points.map(
    (point) => [pascals(point.indicated), pascals(point.reference)] as const,
  );
  const above = points.findIndex(([shown]) => shown >= indicated);
  const [low = points[above], high] = [points[above - 1], points[above]];
  // Below its lowest point, or without any, nothing is known to correct it by.
  if (low === undefined || high === undefined || indicated < low[0]) return indicated;
  if (low === high) return high[1];
  return low[1] + ((indicated - low[0]) / (high[0] - low[0])) * (high[1] - low[1]);
}

/** N per N·m of torque: 1/(K·D), K stated or from the friction of thread and bearing face (VDI 2230-1:2003). */
function loadPerTorque(tag: string): number {
  const joint = jointByTag(plant, tag);
  const { thread, nut } = resolveJoint(jointOf(joint));
  const { nutFactor, frictionThread, frictionBearing } = joint.lubricant ?? {};
  if (thread === null || nut === null) throw new Error('thread or nut not known');
  const { diameter, pitch, pitchDiameter } = thread.value;
  if (nutFactor) return 1 / (Number(nutFactor.text) * diameter);
  const [inThread, underNut] = [Number(frictionThread?.text), Number(frictionBearing?.text)];
  const bearing = (nut.value.bearingOutside + diameter) / 2;
  const flank = (inThread * pitchDiameter) / (2 * Math.cos(Math.PI / 6));
  return 1 / (pitch / (2 * Math.PI) + flank + (underNut * bearing) / 2);
}

/** Tightenings with the wrench from its last good certificate to the one that found it. */
function touched(after = good?.calibratedOn ?? ''): DemoTightening[] {
  return plant.events.filter(
    (event): event is DemoTightening =>
      event.kind === 'tightening' &&
      event.tools.drive === WEAK_WRENCH &&
      event.happenedAt.slice(0, 10) >= after &&
      event.happenedAt.slice(0, 10) <= (failing?.calibratedOn ?? ''),
  );
}

const named = (rows: readonly { readonly tag: string; readonly happenedAt: string }[]) =>
  rows.map(({ tag, happenedAt }) => `${tag} ${happenedAt}`).sort();
const planned = (events: readonly DemoTightening[]) =>
  named(events.map(({ joint, happenedAt }) => ({ tag: joint, happenedAt })));

let started: TestService;
let toolId: string;
let personId: string;
let certificateId: string;

beforeAll(async () => {
  started = startService(temporaryFolder(), NOW);
  await ask(started, 'register.create', { key: key(), data: { content: 'demo' } });
  toolId = (await ask(started, 'tool.find', { text: WEAK_WRENCH }))?.id ?? '';
  personId = (await ask(started, 'person.list', {})).rows[0]?.id ?? '';
  const detail = await ask(started, 'tool.get', { id: toolId });
  certificateId = detail.certificates.find(({ data }) => data.number === failing?.number)?.id ?? '';
});
afterAll(() => started.service.close());

const preview = (): Promise<RecallView> =>
  ask(started, 'case.preview', {
    data: {
      subject: { kind: 'tool', toolId },
      basis: { kind: 'certificate', certificateId },
      happenedAt: NOW,
      personId,
      remarks: '',
    },
  });

const near = (actual: number | null, wanted: number) => {
  expect(actual).not.toBeNull();
  expect(Math.abs((actual ?? Number.NaN) / wanted - 1)).toBeLessThan(1e-6);
};

it('the wrench that delivered 8 % less lists exactly the 23 joints it was in, with the loads they really got', async () => {
  const { affected, window } = await preview();
  expect(window.fromBasis).toContain(good?.number);
  expect(window.toBasis).toContain(failing?.number);
  expect(named(affected)).toEqual(planned(touched()));
  expect(new Set(affected.map(({ tag }) => tag)).size).toBe(23);
  const meant = torquePoints(good?.measured);
  const found = torquePoints(failing?.asFound);
  for (const row of affected) {
    const event = touched().find(
      ({ joint, happenedAt }) => joint === row.tag && happenedAt === row.happenedAt,
    );
    if (event?.dialled === null || event?.dialled === undefined) throw new Error('nothing was dialled');
    const pressure = truePressure(event.tools.gauge, pascals(event.dialled), row.happenedAt.slice(0, 10));
    const [intended, delivered] = [onLine(meant, pressure), onLine(found, pressure)];
    const error = (delivered - intended) / intended;
    expect(error).toBeGreaterThan(-0.085);
    expect(error).toBeLessThan(-0.075);
    near(row.intendedTorque, intended);
    near(row.deliveredTorque, delivered);
    near(row.error, error);
    near(row.intendedLoad, intended * loadPerTorque(row.tag));
    near(row.realLoad, delivered * loadPerTorque(row.tag));
    expect(row.interval?.low).toBeLessThan(row.realLoad ?? 0);
    expect(row.interval?.high).toBeGreaterThan(row.realLoad ?? Number.POSITIVE_INFINITY);
  }
});

it('nobody has opened a case on it; the one on the gauge is closed, with every load decided on or kept', async () => {
  const { rows } = await ask(started, 'case.list', { state: null, page: 1, pageSize: 50 });
  expect(rows.map(({ state, toolId: tool }) => [state, tool === toolId])).toEqual([['closed', false]]);
  const [closed] = rows;
  expect(closed?.affected).toBeGreaterThan(0);
  expect(closed?.decided).toBe(closed?.affected);
});

it('two kits clash over one pump, and one holds a wrench whose certificate lapses before its job', async () => {
  const { rows } = await ask(started, 'kit.list', { closed: false, page: 1, pageSize: 50 });
  expect(rows).toHaveLength(3);
  expect(rows.flatMap(({ clashes }) => clashes.map(({ number }) => number))).toEqual(['P-03', 'P-03']);
  const due = await ask(started, 'tool.due', {
    on: null,
    withinDays: 90,
    text: '',
    class: 'drive unit',
    all: false,
    page: 1,
    pageSize: 200,
  });
  const before = due.rows.filter(
    ({ state, what }) => state === 'due before it is needed' && what === 'Certificate',
  );
  expect(before.map(({ number }) => number)).toEqual(['W-07']);
});

it('tools stand where the moves left them', async () => {
  const { rows } = await ask(started, 'tool.list', {
    text: '',
    class: null,
    sort: 'number',
    direction: 'asc',
    page: 1,
    pageSize: 200,
  });
  const numbers = (status: string) => rows.filter((row) => row.status === status).map(({ number }) => number);
  expect(numbers('at the laboratory')).toEqual(['T-02', 'W-05']);
  expect(numbers('quarantined')).toEqual(['CH-03', 'H-08']);
  expect(numbers('issued')).toEqual(['CH-01', 'CH-02', 'SD-01', 'T-01', 'T-03']);
  expect(rows.filter(({ owner }) => owner === 'hired').map(({ number }) => number)).toEqual(['P-04', 'W-09']);
});

// Last: it adds to the register.
it('a good check in between narrows the list to what came after it', async () => {
  const days = touched()
    .map(({ happenedAt }) => happenedAt.slice(0, 10))
    .sort();
  const middle = days[Math.floor(days.length / 2)] ?? '';
  const wanted = planned(touched(middle));
  expect(wanted.length).toBeLessThan(touched().length);
  expect(wanted.length).toBeGreaterThan(0);
  await ask(started, 'tool.check', {
    key: key(),
    data: {
      toolId,
      kind: 'comparison',
      happenedAt: `${middle}T05:00:00Z`,
      personId,
      checklist: null,
      comparisons: [
        {
          pressure: { text: '400', unit: 'bar' },
          reference: { text: '600', unit: 'N.m' },
          intended: { text: '598', unit: 'N.m' },
        },
      ],
      limit: { text: '4', unit: 'percent' },
      result: 'passed',
      remarks: '',
    },
  });
  const { affected, window } = await preview();
  expect(window.fromBasis).toContain(middle);
  expect(named(affected)).toEqual(wanted);
});
