import { describe, expect, test } from 'vitest';
import type { FindingCode } from '../../core/findings/codes.ts';
import { FINDING_CODES } from '../../core/findings/codes.ts';
import { calibrationOfWork, worstCalibration } from '../../core/joint/life/calibration.ts';
import { workReasons } from '../../core/joint/life/fold.ts';
import { lacksOf } from '../../core/joint/life/lacks.ts';
import { joint, record } from './joint-life.ts';

const finding = (
  code: FindingCode,
  subject = 'W-1',
  severity: 'refusal' | 'warning' | 'note' = 'refusal',
) => ({ code, subject, severity, words: () => ({ title: `${code} of ${subject}` }) });

const followed = (code: FindingCode, subject = 'W-1') => ({
  overrides: [{ code, findings: [{ subject }], reason: 'checked this morning' }],
  issuedBy: 'the engineer',
});

describe('calibration of a piece of work', () => {
  test('nothing recorded of the tools is not known, and nothing against them is in calibration', () => {
    expect(calibrationOfWork(null, null)).toMatchObject({ calibration: 'not known', setAside: null });
    expect(calibrationOfWork([], null).calibration).toBe('in calibration');
  });

  test('a lapsed certificate is not in calibration, a missing one not known; both together not in calibration', () => {
    expect(calibrationOfWork([finding('certificate_lapsed')], null)).toEqual({
      calibration: 'not in calibration',
      why: ['certificate_lapsed of W-1'],
      setAside: null,
    });
    expect(calibrationOfWork([finding('certificate_missing')], null).calibration).toBe('not known');
    const both = [finding('certificate_missing'), finding('certificate_outside_limits', 'G-1')];
    expect(calibrationOfWork(both, null).calibration).toBe('not in calibration');
    expect(calibrationOfWork(both, null).why).toHaveLength(2);
  });

  test('what does not speak of the tools, and what is only a warning, leaves them in calibration', () => {
    const codes = FINDING_CODES.filter((code) => !/certificate|tool|part_missing|certified/.test(code));
    expect(codes.length).toBeGreaterThan(50);
    const findings = codes.map((code) => finding(code));
    expect(calibrationOfWork(findings, null).calibration).toBe('in calibration');
    const warned = [finding('certificate_lapsed', 'W-1', 'warning')];
    expect(calibrationOfWork(warned, null).calibration).toBe('in calibration');
  });

  test('what was set aside when the setting was issued stands with its reason, for that tool and that refusal only', () => {
    const lapsed = [finding('certificate_lapsed')];
    expect(calibrationOfWork(lapsed, followed('certificate_lapsed'))).toMatchObject({
      calibration: 'not in calibration',
      setAside: { reason: 'checked this morning', by: 'the engineer' },
    });
    expect(calibrationOfWork(lapsed, followed('certificate_lapsed', 'W-2')).setAside).toBeNull();
    expect(calibrationOfWork(lapsed, followed('tool_due')).setAside).toBeNull();
    const two = [...lapsed, finding('certificate_outside_limits')];
    expect(calibrationOfWork(two, followed('certificate_lapsed')).setAside).toBeNull();
  });

  test('the passes count with their tools: the worst of them speaks for all', () => {
    const good = calibrationOfWork([], null);
    const bad = calibrationOfWork([finding('certificate_lapsed')], null);
    const aside = calibrationOfWork([finding('certificate_lapsed')], followed('certificate_lapsed'));
    expect(worstCalibration([good, good])).toEqual(good);
    expect(worstCalibration([good, bad, calibrationOfWork(null, null)])).toMatchObject({
      calibration: 'not in calibration',
      why: ['certificate_lapsed of W-1', 'the tools were not recorded'],
      setAside: null,
    });
    expect(worstCalibration([aside, good]).setAside).toEqual(aside.setAside);
    expect(worstCalibration([aside, bad]).setAside).toBeNull();
  });
});

describe('what a tightening lacks', () => {
  const done = { boltsTightened: 12, finalPassNoTurn: true, method: 'hydraulic wrench' as const };

  test('nothing with all studs and a last round without turning', () => {
    expect(lacksOf(done, 12)).toEqual([]);
    expect(lacksOf({ ...done, finalPassNoTurn: false, method: 'tensioner' }, 12)).toEqual([]);
  });

  test('a stud, the round, or the count itself', () => {
    expect(lacksOf({ ...done, boltsTightened: 11, finalPassNoTurn: false }, 12)).toEqual([
      '11 of 12 studs',
      'last round without turning',
    ]);
    expect(lacksOf(done, null)).toEqual(['number of studs not known']);
  });
});

describe('why a record is out of order', () => {
  const tightening = record('tightening');
  const asWork = (event: ReturnType<typeof record>) => {
    if (event.kind === 'step' || event.kind === 'decision') throw new Error('fixture: no work');
    return event;
  };

  test('it is said before it is recorded, and nothing is said where it is in order', () => {
    expect(workReasons(joint('made up'), asWork(record('tightening')))).toEqual([]);
    expect(workReasons(joint('unassessed'), asWork(tightening))).toEqual([]);
    expect(workReasons(joint('in service'), asWork(record('breakout')))).toEqual([
      'breakout recorded while in service',
    ]);
  });
});
