import { describe, expect, it } from 'vitest';
import { certificateInForce } from '../../core/calibration/validity.ts';
import { breakoutData, personData, tighteningData, unitData } from '../../core/contract/event.ts';
import { toolData } from '../../core/contract/tool.ts';
import { resolveJoint } from '../../core/joint/resolve.ts';
import { seat } from '../../core/tools/fit.ts';
import { LATE_USE } from '../../seed/faults.ts';
import { demoPlant } from '../../seed/plant.ts';
import { certificateOf, certificatesOf, eventInput, jointByTag, jointOf, toolOf } from './parsed.ts';

const TODAY = '2026-11-25';
const plant = demoPlant();
const unique = (keys: readonly string[]) => new Set(keys).size === keys.length;

describe('the demo plant', () => {
  it('is the same for the same day and seed, and another one for another seed', () => {
    expect(JSON.stringify(demoPlant({ today: TODAY, seed: 20261125 }))).toBe(JSON.stringify(plant));
    expect(JSON.stringify(demoPlant({ seed: 2 }).joints)).not.toBe(JSON.stringify(plant.joints));
  });

  it('has the size of a small site', () => {
    expect(plant.units.length).toBeGreaterThanOrEqual(6);
    expect(plant.joints.length).toBeGreaterThanOrEqual(300);
    expect(plant.tools.length).toBeGreaterThanOrEqual(26);
    expect(plant.certificates.length).toBeGreaterThanOrEqual(60);
    expect(plant.events.length).toBeGreaterThanOrEqual(500);
    expect(plant.events.filter(({ kind }) => kind === 'breakout').length).toBeGreaterThanOrEqual(150);
    expect(new Set(plant.tools.map(({ properties }) => properties.class)).size).toBe(10);
    const years = new Set(plant.events.map(({ happenedAt }) => happenedAt.slice(0, 4)));
    expect([...years].sort()).toEqual(['2023', '2024', '2025', '2026']);
  });

  it('says that it is invented wherever it shows', () => {
    expect(plant.site.name).toMatch(/invented/);
    for (const { role } of plant.people) expect(role).toMatch(/invented/);
    const remarks = [...plant.joints, ...plant.tools, ...plant.certificates, ...plant.events].map(
      (each) => each.remarks,
    );
    expect(remarks.filter((text) => !text?.startsWith('Invented demo'))).toEqual([]);
    for (const { laboratory } of plant.certificates) expect(laboratory).toMatch(/^Invented/);
  });

  it('gives every record a key of its own', () => {
    expect(unique(plant.units.map(({ name }) => name))).toBe(true);
    expect(unique(plant.people.map(({ name }) => name))).toBe(true);
    expect(unique(plant.joints.map(({ tag }) => tag.toLowerCase()))).toBe(true);
    expect(unique(plant.tools.map(({ number }) => number.toLowerCase()))).toBe(true);
    expect(unique(plant.certificates.map(({ number }) => number))).toBe(true);
  });
});

it('has a shutdown before it whose jobs and sets name what the plant has', () => {
  const { jobs, sets, crews, startsAt, remarks } = plant.campaign;
  const tags = new Set(plant.joints.map(({ tag }) => tag));
  const tools = new Set(plant.tools.map(({ number }) => number));
  const people = new Set<string>(plant.people.map(({ name }) => name));
  expect(jobs.length).toBeGreaterThan(30);
  expect(jobs.filter(({ joint }) => !tags.has(joint))).toEqual([]);
  expect(unique(jobs.map(({ number }) => number))).toBe(true);
  expect(sets.length).toBeGreaterThan(3);
  const parts = sets.flatMap((set) => [
    set.tools.drive,
    set.tools.cassette,
    set.tools.pump,
    ...set.tools.hoses,
  ]);
  expect(parts.filter((number) => number === null || !tools.has(number))).toEqual([]);
  expect(crews.flatMap((crew) => crew.people).filter((name) => !people.has(name))).toEqual([]);
  expect(startsAt > TODAY).toBe(true);
  expect(
    [remarks, ...jobs.map((job) => job.remarks)].filter((text) => !text?.startsWith('Invented')),
  ).toEqual([]);
});

describe('every record of the plant', () => {
  it('passes the schemas that forms and imports pass', () => {
    for (const unit of plant.units) expect(unitData.safeParse(unit).error).toBeUndefined();
    for (const person of plant.people) expect(personData.safeParse(person).error).toBeUndefined();
    for (const tool of plant.tools) expect(toolData.safeParse(tool).error).toBeUndefined();
    for (const joint of plant.joints) expect(jointOf(joint).tag).toBe(joint.tag);
    for (const certificate of plant.certificates)
      expect(certificateOf(certificate).number).toBe(certificate.number);
    for (const event of plant.events) {
      const schema = event.kind === 'tightening' ? tighteningData : breakoutData;
      expect(schema.safeParse(eventInput(event)).error).toBeUndefined();
    }
  });

  it('names only what the plant has', () => {
    const units = new Set(plant.units.map(({ name }) => name));
    const tags = new Set(plant.joints.map(({ tag }) => tag));
    const people = new Set(plant.people.map(({ name }) => name));
    const classes = new Map(plant.tools.map(({ number, properties }) => [number, properties.class]));
    expect(plant.joints.filter(({ unit }) => !units.has(unit))).toEqual([]);
    for (const { tool, withTools } of plant.certificates) {
      expect(['drive unit', 'gauge', 'hand torque wrench']).toContain(classes.get(tool));
      for (const part of withTools) expect(['cassette', 'reducer']).toContain(classes.get(part));
    }
    for (const event of plant.events) {
      const { drive, cassette, reducers, pump, gauge, hoses } = event.tools;
      expect(tags.has(event.joint)).toBe(true);
      expect(event.people.filter((name) => !people.has(name))).toEqual([]);
      expect(unique(event.people)).toBe(true);
      if (drive !== null) {
        expect([drive, cassette, pump, gauge].map((number) => classes.get(number ?? ''))).toEqual([
          'drive unit',
          'cassette',
          'pump',
          'gauge',
        ]);
      }
      expect(reducers.filter((number) => classes.get(number) !== 'reducer')).toEqual([]);
      expect(hoses.filter((number) => classes.get(number) !== 'hose')).toEqual([]);
    }
  });

  it('of states names joints and people the plant has, and no joint that work is recorded on later', () => {
    const tags = new Set(plant.joints.map(({ tag }) => tag));
    const people = new Set(plant.people.map(({ name }) => name));
    const { steps, classAt } = plant.life;
    expect(steps.length).toBeGreaterThan(30);
    for (const { joint, by, evidence, happenedAt } of steps) {
      expect(tags.has(joint), joint).toBe(true);
      expect(people.has(by), by).toBe(true);
      for (const [, name = ''] of JSON.stringify(evidence).matchAll(/\{([^{}"]+)\}/g)) {
        expect(people.has(name), name).toBe(true);
      }
      const later = plant.events.filter(
        (event) => event.joint === joint && Date.parse(event.happenedAt) >= Date.parse(classAt),
      );
      expect(later).toEqual([]);
      expect(Date.parse(happenedAt)).toBeLessThan(Date.parse(`${TODAY}T00:00:00+01:00`));
    }
  });

  it('of work is in order of time and before today', () => {
    const moments = plant.events.map(({ happenedAt }) => Date.parse(happenedAt));
    expect([...moments].sort((a, b) => a - b)).toEqual(moments);
    expect(Math.max(...moments)).toBeLessThan(Date.parse(`${TODAY}T00:00:00+01:00`));
  });

  it('of work follows from one another: a joint is tightened, opened, tightened', () => {
    for (const { tag } of plant.joints) {
      const kinds = plant.events.filter(({ joint }) => joint === tag).map(({ kind }) => kind);
      const expected = kinds.map((_, index) => (index % 2 === 0 ? 'tightening' : 'breakout'));
      expect(kinds).toEqual(expected);
    }
  });

  it('of work was done with a set that fits the nut, in date, dialled on a mark of its gauge', () => {
    const withSets = plant.events.filter(({ tools, joint }) => tools.drive !== null && joint !== LATE_USE);
    expect(withSets.length).toBeGreaterThan(500);
    for (const event of withSets) {
      const nut = resolveJoint(jointOf(jointByTag(plant, event.joint))).nut?.value;
      const last = event.tools.reducers.at(-1) ?? event.tools.cassette;
      const { properties } = toolOf(plant, last ?? '');
      if (properties.class !== 'cassette' && properties.class !== 'reducer')
        throw new Error('not an opening');
      const { acrossFlats, looseness } = properties;
      expect(
        seat({ acrossFlats: acrossFlats.si, looseness: looseness?.si ?? null }, nut?.acrossFlats ?? 0),
      ).toBe('fits');

      const certificate = certificateInForce(
        certificatesOf(plant, event.tools.drive ?? ''),
        event.happenedAt.slice(0, 10),
      );
      expect(certificate?.data.result).toBe('within limits');

      const gauge = toolOf(plant, event.tools.gauge ?? '').properties;
      if (gauge.class !== 'gauge') throw new Error('not a gauge');
      const dials =
        event.kind === 'tightening' ? [event.dialled] : event.readings.map(({ dialled }) => dialled);
      for (const dial of dials.filter((each) => each !== null)) {
        expect(dial.unit).toBe(gauge.scaleMax.unit);
        expect(Number(dial.text) % Number(gauge.graduation.text)).toBe(0);
        expect(Number(dial.text)).toBeLessThanOrEqual(Number(gauge.scaleMax.text));
      }
    }
  });

  it('of a breakout has one reading a stud', () => {
    for (const event of plant.events) {
      if (event.kind !== 'breakout') continue;
      const { boltCount } = resolveJoint(jointOf(jointByTag(plant, event.joint)));
      expect(event.readings.map(({ bolt }) => bolt)).toEqual(
        Array.from({ length: boltCount ?? 0 }, (_, i) => i + 1),
      );
    }
  });
});

it('bolting of standard flanges is left to the standard, which knows it', () => {
  const standard = plant.joints.filter(({ flange, service }) => flange.kind === 'standard' && service !== '');
  expect(standard.length).toBeGreaterThan(290);
  for (const joint of standard) {
    expect(joint.bolting.thread).toBeNull();
    const resolved = resolveJoint(jointOf(joint));
    expect(resolved.thread?.origin).toBe('standard');
    expect(resolved.boltCount).toBeGreaterThanOrEqual(4);
  }
  const custom = plant.joints.filter(({ flange }) => flange.kind === 'custom');
  expect(custom.length).toBeGreaterThanOrEqual(8);
});

it.each(['2025-03-30', '2028-02-29', '2031-07-01'])('the plant stands as well on %s', (today) => {
  const other = demoPlant({ today });
  expect(other.events.length).toBeGreaterThan(500);
  expect(other.events.at(-1)?.happenedAt.slice(0, 10) ?? '').not.toBe('');
  expect(other.events.filter(({ happenedAt }) => happenedAt.slice(0, 10) >= today)).toEqual([]);
  const without = other.events.filter(
    ({ tools, happenedAt, joint }) =>
      tools.drive !== null &&
      joint !== LATE_USE &&
      certificateInForce(certificatesOf(other, tools.drive), happenedAt.slice(0, 10)) === null,
  );
  expect(without).toEqual([]);
});
