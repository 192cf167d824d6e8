import { describe, expect, test } from 'vitest';
import { FINDING_CODES, type FindingCode } from '../../core/findings/codes.ts';
import { settingCard } from '../../core/setting/card.ts';
import { CALIBRATION_CASES } from './calibration-finding-cases.ts';
import { changed, completeInput } from './complete-input.ts';
import type { Case } from './finding-case.ts';
import { found } from './finding-parts.ts';
import { JOINT_CASES } from './joint-finding-cases.ts';
import { MISSING_DATA_CASES } from './missing-data-cases.ts';
import { TOOL_ROOM_CASES } from './tool-room-cases.ts';
import { SET_CASES } from './tool-set-cases.ts';

/** For every code, a change of an input that has nothing against it which makes the finding appear. */
const CASES: Record<FindingCode, Case> = {
  ...MISSING_DATA_CASES,
  ...JOINT_CASES,
  ...SET_CASES,
  ...CALIBRATION_CASES,
  ...TOOL_ROOM_CASES,
};

test.each(['tightening', 'breakout'] as const)('a complete %s has nothing against it', (kind) => {
  const card = settingCard(completeInput(kind));
  expect(card.findings).toEqual([]);
  expect(card.issuable).toBe(true);
});

describe.each(FINDING_CODES)('%s', (code) => {
  const { kind = 'tightening', severity, change } = CASES[code];

  test('is silent where nothing is wrong', () => {
    expect(found(completeInput(kind), code)).toEqual([]);
  });

  test(`appears as a ${severity}, in words, with a place to mend it`, () => {
    const input = changed(completeInput(kind), change);
    const findings = found(input, code);
    expect(findings.length).toBeGreaterThan(0);
    expect(findings.map((finding) => finding.severity)).toContain(severity);
    for (const finding of findings) {
      expect(finding.title.length).toBeGreaterThan(5);
      expect(finding.detail).not.toMatch(/NaN|undefined|null|Infinity/);
      expect(finding.remedy.length).toBeGreaterThan(10);
      expect(finding.source.length).toBeGreaterThan(2);
    }
    expect(settingCard(input).issuable).toBe(
      settingCard(input).findings.every((finding) => finding.severity !== 'refusal'),
    );
  });
});
