import { describe, expect, test } from 'vitest';
import type { FindingCode } from '../../core/findings/codes.ts';
import { settingCard } from '../../core/setting/card.ts';
import type { CardInput } from '../../core/setting/input.ts';
import type { ToolFacts } from '../../core/tools/facts.ts';
import { handWrenchAsSet } from '../../core/tools/hand-wrench.ts';
import { reactionForce } from '../../core/tools/reaction.ts';
import { typed } from '../truth/entered.ts';
import { changed, completeInput, type InputDraft } from './complete-input.ts';
import type { Change } from './finding-case.ts';
import { chosen } from './finding-parts.ts';
import { driveFacts, SEAL_LIST, sealList, secondWrench, siteRule } from './tool-room-cases.ts';

const cardOf = (change: Change, kind: 'tightening' | 'breakout' = 'tightening') =>
  settingCard(changed(completeInput(kind), change));

/** Code, severity and subject of everything that stands against a changed input. */
const stands = (change: Change) =>
  cardOf(change).findings.map(({ code, severity, subject }) => [code, severity, subject]);

const details = (change: Change, code: FindingCode) =>
  cardOf(change)
    .findings.filter((finding) => finding.code === code)
    .map(({ detail }) => detail);

const agreeWithin =
  (percent: string, factor: number): Change =>
  (input) => {
    secondWrench(input, factor);
    siteRule(input, { lineAgreement: typed(percent, 'percent') });
  };

describe('several wrenches on one pump', () => {
  test('one pressure serves them while their lines lie within the site’s limit', () => {
    expect(stands(agreeWithin('3', 1.029))).toEqual([]);
    expect(stands(agreeWithin('3', 1.031))).toEqual([['lines_disagree', 'refusal', 'A']]);
    // The limit is a fraction of the first wrench's torque, whichever gives more.
    expect(stands(agreeWithin('3', 0.971))).toEqual([]);
    expect(stands(agreeWithin('3', 0.969))).toEqual([['lines_disagree', 'refusal', 'A']]);
  });

  test('lines that differ by a factor differ by it at every pressure, and the mark’s is told', () => {
    // Least squares is linear in the torques: 1.04 times every point is 1.04 times the line.
    const [detail = ''] = details(agreeWithin('3', 1.04), 'lines_disagree');
    const { torque } = cardOf(agreeWithin('3', 1.04));
    expect(torque).not.toBeNull();
    expect(detail).toContain('At 260 bar');
    expect(detail).toContain('4 % apart, 3 % allowed');
  });

  test('without a limit of the site it is not known, and refuses', () => {
    const change: Change = (input) => {
      secondWrench(input);
      siteRule(input, {});
    };
    expect(stands(change)).toEqual([['line_agreement_unknown', 'refusal', 'A']]);
    expect(cardOf(change).issuable).toBe(false);
  });

  test.each<[string, (input: InputDraft, wrench: ReturnType<typeof secondWrench>) => void, unknown[]]>([
    [
      'its certificate lapsed',
      (_, { drive }) => {
        const [certificate] = drive?.certificates ?? [];
        if (certificate !== undefined) certificate.data.validUntil = '2026-03-15';
      },
      ['certificate_lapsed', 'refusal', 'D-05'],
    ],
    [
      'it was never calibrated with this cassette',
      (_, { drive }) => {
        const [certificate] = drive?.certificates ?? [];
        if (certificate !== undefined) certificate.data.withToolIds = [];
      },
      ['combination_not_certified', 'warning', 'D-05'],
    ],
    [
      'its rating is below the torque',
      (_, { cassette }) => {
        if (cassette !== null) cassette.data.properties.ratedTorque = typed('300', 'N.m');
      },
      ['torque_above_rating', 'refusal', 'C-12'],
    ],
    [
      'its hose is rated below the pressure',
      (_, { hoses }) => {
        for (const hose of hoses) hose.data.properties.ratedPressure = typed('200', 'bar');
      },
      ['pressure_above_rating', 'refusal', 'H-23'],
    ],
    [
      'it is quarantined',
      (_, { drive }) => {
        if (drive !== null) drive.data.status = 'quarantined';
      },
      ['tool_barred', 'refusal', 'D-05'],
    ],
    [
      'its opening does not take the nut',
      (_, { cassette }) => {
        if (cassette !== null) cassette.data.properties.acrossFlats = typed('36', 'mm');
      },
      ['opening_too_small', 'refusal', 'C-12'],
    ],
    [
      'its family is another',
      (_, { cassette }) => {
        if (cassette !== null) cassette.data.properties.family = 'F9';
      },
      ['family_differs', 'refusal', 'C-12'],
    ],
    [
      'it has no hose',
      (_, wrench) => {
        wrench.hoses = [];
      },
      ['part_missing', 'refusal', 'hose of wrench 2'],
    ],
    [
      'its points end below the pressure',
      (_, { drive }) => {
        const measured = drive?.certificates[0]?.data.measured;
        if (measured?.kind === 'pressure-torque') measured.points.splice(3);
      },
      ['above_certified_points', 'refusal', 'D-05'],
    ],
  ])('a second wrench is held to the same: %s', (_, spoil, expected) => {
    const found = stands((input) => {
      const wrench = secondWrench(input);
      siteRule(input, { lineAgreement: typed('3', 'percent') });
      spoil(input, wrench);
    });
    expect(found).toContainEqual(expected);
  });

  test('a plan for two tools is silent with two, and speaks up for four', () => {
    const plan =
      (planId: string): Change =>
      (input) => {
        input.planId = planId;
        agreeWithin('3', 1)(input);
      };
    expect(stands(plan('two-tools-thirds'))).toEqual([]);
    expect(stands(plan('four-tools-thirds'))).toEqual([['further_tools_unchecked', 'warning', 'A']]);
  });

  test('every part of the second wrench stands in the chain, and the weakest of all is marked', () => {
    const { set } = cardOf((input) => {
      const { drive } = secondWrench(input);
      if (drive !== null) drive.data.properties.ratedPressure = typed('600', 'bar');
    });
    expect(
      set.filter(({ role }) => role === 'drive unit').map(({ number, weakest }) => [number, weakest]),
    ).toEqual([
      ['D-04', false],
      ['D-05', true],
    ]);
  });
});

describe('lines and pump', () => {
  test('a coupler rated below the pressure is refused like any part', () => {
    const change =
      (bar: string): Change =>
      (input) => {
        for (const { data } of input.set.couplers) data.properties.ratedPressure = typed(bar, 'bar');
      };
    expect(stands(change('250'))).toContainEqual(['pressure_above_rating', 'refusal', 'K-31']);
    expect(stands(change('260'))).toEqual([]);
  });

  test('the coupling of every wrench’s line counts, whatever its spelling', () => {
    const second =
      (coupling: string): Change =>
      (input) => {
        const { drive } = secondWrench(input);
        siteRule(input, { lineAgreement: typed('3', 'percent') });
        if (drive !== null) drive.data.properties.coupling = coupling;
      };
    expect(stands(second(' s1 '))).toEqual([]);
    expect(stands(second('S2'))).toEqual([['coupling_differs', 'refusal', 'D-05']]);
  });

  test('names that are known are compared although another is not', () => {
    const found = stands((input) => {
      chosen(input, 'pump').data.properties.coupling = '';
      chosen(input, 'drive').data.properties.coupling = 'S2';
    });
    expect(found.map(([code]) => code)).toEqual(['coupling_differs', 'coupling_unknown']);
  });
});

describe('gauge face', () => {
  test('a second unit is told with the card’s own; the same unit twice is not a second', () => {
    const also =
      (unit: 'psi' | 'bar'): Change =>
      (input) => {
        chosen(input, 'gauge').data.properties.alsoPrinted = unit;
      };
    expect(details(also('psi'), 'gauge_second_unit')[0]).toContain(
      'this card is in bar, the face has psi as well',
    );
    expect(stands(also('bar'))).toEqual([]);
  });
});

describe('certificate and combination', () => {
  const withPump =
    (id: (input: InputDraft) => string): Change =>
    (input) => {
      const [certificate] = chosen(input, 'drive').certificates;
      if (certificate !== undefined) certificate.data.withToolIds.push(id(input));
    };

  test('a certificate that names pump or gauge speaks for these alone', () => {
    expect(stands(withPump((input) => chosen(input, 'pump').id))).toEqual([]);
    expect(stands(withPump((input) => chosen(input, 'gauge').id))).toEqual([]);
    const another = '018f0000-0000-7000-8000-000000000099';
    expect(stands(withPump(() => another))).toEqual([['combination_not_certified', 'warning', 'D-04']]);
  });
});

describe('stud, head and counterhold', () => {
  const head =
    (changes: object): Change =>
    (input) => {
      Object.assign(chosen(input, 'cassette').data.properties, changes);
    };

  test('a stud of the fixture stands 6.7 mm out of the nut: L 145, grip 86.6, nut 22.48', () => {
    // (145 − 86.6 − 2·22.479)/2 = 6.721 mm, by hand; nut height of ASME B18.2.2, largest.
    expect(stands(head({ openThrough: false, studRoom: typed('6.73', 'mm') }))).toEqual([]);
    expect(stands(head({ openThrough: false, studRoom: typed('6.71', 'mm') }))).toEqual([
      ['stud_hits_head', 'refusal', 'C-11'],
    ]);
    expect(stands(head({ openThrough: true, studRoom: typed('1', 'mm') }))).toEqual([]);
  });

  test('a 7/8 in stud goes into a bore of its size, not into a smaller one', () => {
    expect(stands(head({ bore: typed('7/8', 'in') }))).toEqual([]);
    expect(stands(head({ bore: typed('22.2', 'mm') }))).toEqual([
      ['stud_wider_than_bore', 'refusal', 'C-11'],
    ]);
  });

  test('what nobody measured is named, and not taken as room', () => {
    const [detail = ''] = details(head({ bore: null, openThrough: false }), 'clearance_unknown');
    expect(detail).toContain('bore of the head, room for the stud’s end in the head');
    const [along = ''] = details((input) => {
      input.joint.data.space.axialGap = null;
    }, 'clearance_unknown');
    expect(along).toContain('free distance along the stud');
  });

  test('a head as high as the free distance goes in', () => {
    expect(stands(head({ height: typed('200', 'mm') }))).toEqual([]);
    expect(stands(head({ height: typed('201', 'mm') }))).toEqual([['head_too_high', 'refusal', 'C-11']]);
  });

  test('a counterhold is held against nut and torque', () => {
    const counterhold =
      (changes: object): Change =>
      (input) => {
        Object.assign(chosen(input, 'counterhold').data.properties, changes);
      };
    expect(stands(counterhold({ acrossFlats: typed('36.5125', 'mm') }))).toEqual([]);
    expect(stands(counterhold({ acrossFlats: typed('38', 'mm') }))).toEqual([
      ['counterhold_does_not_fit', 'refusal', 'B-05'],
    ]);
    expect(stands(counterhold({ ratedTorque: typed('350', 'N.m') }))).toContainEqual([
      'torque_above_rating',
      'refusal',
      'B-05',
    ]);
    expect(stands(counterhold({ ratedTorque: null }))).toEqual([['rating_unknown', 'warning', 'B-05']]);
    expect(stands(counterhold({ looseness: null }))).toEqual([['looseness_unknown', 'note', 'B-05']]);
  });
});

describe('reaction', () => {
  test('the force is torque over arm, shown with its working and its cautions', () => {
    const { reaction, torque, workings } = settingCard(completeInput('tightening'));
    expect(reaction?.arm).toBe(0.16);
    expect(reaction?.force).toBeCloseTo((torque ?? Number.NaN) / 0.16, 6);
    expect(reaction?.cautions.map(({ text }) => text.slice(0, 20))).toEqual([
      'Keep hands, arms and',
      'The reaction member ',
    ]);
    expect(workings.find(({ of }) => of === 'reaction')?.result.si).toBe(reaction?.force);
    // A lever of 0.2 m under 1000 N·m pushes with 5 kN.
    expect(reactionForce(1000, 0.2)).toBe(5000);
  });

  test('a breakout may go on to its ceiling: the force is that of the highest torque', () => {
    const { reaction, breakout } = settingCard(completeInput('breakout'));
    const ceilings = [breakout?.capacity, breakout?.studCeilingElastic].filter(
      (each) => typeof each === 'number',
    );
    expect(reaction?.torque).toBe(Math.min(...ceilings));
  });

  test('without an arm there is no force; the card says what to measure', () => {
    const { reaction, workings } = cardOf((input) => {
      chosen(input, 'cassette').data.properties.reactionArm = null;
    });
    expect(reaction).toMatchObject({ arm: null, force: null, tool: null });
    expect(reaction?.needs).toContain('measure the distance');
    expect(workings.some(({ of }) => of === 'reaction')).toBe(false);
    const driven = cardOf((input) => {
      chosen(input, 'cassette').data.properties.reactionArm = null;
      chosen(input, 'drive').data.properties.reactionArm = typed('200', 'mm');
    });
    expect(driven.reaction).toMatchObject({ arm: 0.2, tool: 'D-04' });
  });
});

describe('what the tool room knows', () => {
  const seal =
    (on: string, changes: object = {}): Change =>
    (input) => {
      sealList(input, changes);
      const check: ToolFacts['checks'][number] = {
        id: 'a check',
        kind: 'seal inspection',
        checklistId: SEAL_LIST,
        on,
        result: 'passed',
        usesSince: 3,
      };
      driveFacts(input, { checks: [check] });
    };
  const dueTitles = (change: Change) =>
    cardOf(change)
      .findings.filter(({ code }) => code === 'tool_due')
      .map(({ severity, title }) => [severity, title]);

  test('a check is in date, due before the job ends, or overdue', () => {
    // Every 30 days; the job is on 16 and 17 March.
    expect(dueTitles(seal('2026-02-15'))).toEqual([]);
    expect(dueTitles(seal('2026-02-14'))).toEqual([['warning', 'Seal inspection: due before the job ends']]);
    expect(dueTitles(seal('2026-02-13'))).toEqual([['warning', 'Seal inspection: overdue']]);
    expect(dueTitles(seal('2026-02-13', { overdue: 'refuse' }))).toEqual([
      ['refusal', 'Seal inspection: overdue'],
    ]);
    expect(dueTitles(seal('2026-02-14', { overdue: 'refuse' }))).toEqual([
      ['warning', 'Seal inspection: due before the job ends'],
    ]);
  });

  test('a failed check and an overload refuse whatever the list says', () => {
    const failed: ToolFacts['checks'][number] = {
      id: 'a check',
      kind: 'leak test',
      checklistId: null,
      on: '2026-03-01',
      result: 'failed',
      usesSince: 0,
    };
    expect(dueTitles((input) => driveFacts(input, { checks: [failed] }))).toEqual([
      ['refusal', 'Leak test: overdue'],
    ]);
    expect(dueTitles((input) => driveFacts(input, { checks: [{ ...failed, result: 'passed' }] }))).toEqual(
      [],
    );
    const overload = { eventId: 'an event', on: '2026-03-02', text: 'dialled 720 bar' };
    expect(dueTitles((input) => driveFacts(input, { overload }))).toEqual([['refusal', 'Overload: overdue']]);
  });

  test('the site’s rule shortens a certificate, by days and by uses; its own words speak otherwise', () => {
    expect(dueTitles((input) => siteRule(input, { certificateDays: 60 }))).toEqual([
      ['refusal', 'Certificate: overdue'],
    ]);
    expect(dueTitles((input) => siteRule(input, { certificateDays: 365 }))).toEqual([]);
    const used =
      (sinceCertificate: number): Change =>
      (input) => {
        siteRule(input, { certificateUses: 50 });
        driveFacts(input, { uses: { total: 80, sinceCertificate } });
      };
    expect(dueTitles(used(50))).toEqual([['refusal', 'Certificate: overdue']]);
    expect(dueTitles(used(49))).toEqual([]);
    const lapsed = stands((input) => {
      siteRule(input, { certificateDays: 365 });
      const [certificate] = chosen(input, 'drive').certificates;
      if (certificate !== undefined) certificate.data.validUntil = '2026-03-15';
    });
    expect(lapsed).toEqual([['certificate_lapsed', 'refusal', 'D-04']]);
  });

  test('hoses: the site’s rule stands before the common six years', () => {
    const rule =
      (changes: object): Change =>
      (input) =>
        siteRule(input, { class: 'hose', ...changes });
    expect(stands(rule({ hoseAgeMonths: 24 }))).toEqual([]);
    expect(stands(rule({ hoseAgeMonths: 12 }))).toEqual([['tool_due', 'refusal', 'H-22']]);
    expect(stands(rule({ hoseUseMonths: 12 }))).toEqual([['tool_due', 'refusal', 'H-22']]);
    expect(stands(rule({ hoseTestMonths: 12 }))).toEqual([['tool_due', 'refusal', 'H-22']]);
  });

  test('a hired tool has to go back after the job', () => {
    const hired =
      (returnBy: string): Change =>
      (input) => {
        chosen(input, 'pump').data.owner = { kind: 'hired', from: 'invented hire', returnBy };
      };
    expect(dueTitles(hired('2026-03-17'))).toEqual([]);
    expect(dueTitles(hired('2026-03-16'))).toEqual([
      ['warning', 'Return to the hirer: due before the job ends'],
    ]);
  });

  test('a kit warns on its own days, and not for its own joint', () => {
    const kit =
      (from: string, to: string, jointIds: string[]): Change =>
      (input) =>
        driveFacts(input, { kits: [{ id: 'a kit', name: 'Unit 300', jointIds, from, to }] });
    const ours = completeInput('tightening').joint.id;
    expect(stands(kit('2026-03-17', '2026-03-20', ['another joint']))).toEqual([
      ['kit_reserved', 'warning', 'D-04'],
    ]);
    expect(stands(kit('2026-03-18', '2026-03-20', ['another joint']))).toEqual([]);
    expect(stands(kit('2026-03-01', '2026-03-15', ['another joint']))).toEqual([]);
    expect(stands(kit('2026-03-17', '2026-03-20', ['another joint', ours]))).toEqual([]);
    expect(stands(kit('2026-03-17', '2026-03-20', []))).toEqual([['kit_reserved', 'note', 'D-04']]);
  });
});

describe('a hand torque wrench of the register', () => {
  const withWrench = (
    change: (wrench: NonNullable<InputDraft['handWrench']>) => void = () => undefined,
  ): CardInput =>
    changed(completeInput('tightening'), (input) => {
      const wrench: NonNullable<InputDraft['handWrench']> = {
        id: '018f0000-0000-7000-8000-000000000061',
        data: {
          ...structuredClone(chosen(input, 'pump').data),
          number: 'HW-7',
          properties: {
            class: 'hand torque wrench',
            least: typed('100', 'N.m'),
            most: typed('500', 'N.m'),
            torqueGraduation: typed('5', 'N.m'),
            square: null,
          },
        },
        certificates: structuredClone(chosen(input, 'drive').certificates),
      };
      change(wrench);
      input.method = 'hand torque wrench';
      input.handWrench = wrench;
      input.torqueTool = structuredClone(handWrenchAsSet(wrench, input.startsOn)) as InputDraft['torqueTool'];
    });
  const found = (input: CardInput) =>
    settingCard(input).findings.map(({ code, severity }) => [code, severity]);

  test('its scale and certificate are the register’s', () => {
    const card = settingCard(withWrench());
    expect(card.findings).toEqual([]);
    expect(card.toolSetting).toMatchObject({ tool: 'HW-7', text: '385 N·m' });
    expect(card.reaction).toBeNull();
  });

  test.each<[string, (wrench: NonNullable<InputDraft['handWrench']>) => void, [FindingCode, string]]>([
    ['quarantined', ({ data }) => Object.assign(data, { status: 'quarantined' }), ['tool_barred', 'refusal']],
    [
      'no certificate',
      (wrench) => Object.assign(wrench, { certificates: [] }),
      ['certificate_missing', 'refusal'],
    ],
    [
      'certificate lapsed',
      ({ certificates: [certificate] }) =>
        Object.assign(certificate?.data ?? {}, { validUntil: '2026-03-01' }),
      ['certificate_lapsed', 'refusal'],
    ],
    [
      'outside limits',
      ({ certificates: [certificate] }) =>
        Object.assign(certificate?.data ?? {}, { result: 'outside limits' }),
      ['certificate_outside_limits', 'refusal'],
    ],
    [
      'scale too short',
      ({ data: { properties } }) => Object.assign(properties, { most: typed('300', 'N.m') }),
      ['torque_tool_unsuitable', 'refusal'],
    ],
    [
      'hired and due back',
      ({ data }) =>
        Object.assign(data, { owner: { kind: 'hired', from: 'invented hire', returnBy: '2026-03-16' } }),
      ['tool_due', 'warning'],
    ],
  ])('%s', (_, spoil, expected) => {
    expect(found(withWrench(spoil))).toEqual([expected]);
  });
});
