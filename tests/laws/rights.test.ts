import { describe, expect, test } from 'vitest';
import { admission, RIGHTS } from '../../core/access/rights.ts';
import { ROLES } from '../../core/access/roles.ts';
import { SIGNERS, signedForAnother } from '../../core/access/signers.ts';
import { custodyStep } from '../../core/contract/custody.ts';
import { importKind } from '../../core/contract/import.ts';
import { jointStep } from '../../core/contract/life.ts';
import { REQUEST_KINDS, REQUEST_NAMES, type RequestName } from '../../core/contract/names.ts';
import { role } from '../../core/contract/roles.ts';
import { signatureMeaning } from '../../core/contract/signature.ts';
import { STEPS } from '../../core/joint/life/steps.ts';
import { RIGHTS_MATRIX, ROLE_NAMES } from './rights-matrix.ts';

const CHOICES: Readonly<Record<string, readonly string[]>> = {
  'tool.move': custodyStep.options,
  'import.confirm': importKind.options,
  'joint.step': jointStep.options,
  'event.sign': signatureMeaning.options,
};

test('the roles are those of the contract', () => {
  expect([...ROLES]).toEqual(role.options);
  expect([...ROLE_NAMES]).toEqual(role.options);
});

test('every request of the map has a right', () => {
  const missing = REQUEST_NAMES.filter((name) => !Object.hasOwn(RIGHTS, name));
  expect(missing, `add these to RIGHTS in core/access/rights.ts: ${missing.join(', ')}`).toEqual([]);
  const stray = Object.keys(RIGHTS).filter((name) => !Object.hasOwn(REQUEST_KINDS, name));
  expect(stray, `no longer requests; take them out of core/access/rights.ts: ${stray.join(', ')}`).toEqual(
    [],
  );
});

test('every request of the map has a row of its own in the matrix', () => {
  const entered = new Set(RIGHTS_MATRIX.map(({ request }) => request));
  const missing = REQUEST_NAMES.filter((name) => !entered.has(name));
  expect(missing, `enter who may in tests/laws/rights-matrix.ts: ${missing.join(', ')}`).toEqual([]);
  const stray = [...entered].filter((name) => !Object.hasOwn(REQUEST_KINDS, name));
  expect(stray, `no longer requests; take them out of tests/laws/rights-matrix.ts`).toEqual([]);
});

/** The field of the input a right hangs on, filled with the row's choice. */
function inputFor(request: string, choice: string | null): unknown {
  const right = RIGHTS[request as RequestName];
  if (choice === null || !(typeof right === 'object' && 'by' in right)) return {};
  return right.by.split('.').reduceRight<unknown>((inner, key) => ({ [key]: inner }), choice);
}

describe.each(RIGHTS_MATRIX)('$request $choice', ({ request, choice, who }) => {
  const name = request as RequestName;
  const input = inputFor(request, choice);

  test.each(ROLE_NAMES)('%s', (one) => {
    const may = who === 'anybody' || who === 'own' || who.includes(one);
    const answer = admission(name, input, [one]);
    expect(answer).toEqual(may ? { is: 'allowed' } : { is: 'refused', roles: who });
  });

  test('nobody signed in, and somebody without a role', () => {
    expect(admission(name, input, null).is).toBe(who === 'anybody' ? 'allowed' : 'sign in first');
    expect(admission(name, input, []).is).toBe(who === 'anybody' || who === 'own' ? 'allowed' : 'refused');
  });
});

test('a right that hangs on a choice knows each choice, and refuses one it does not know', () => {
  const byChoice = Object.entries(RIGHTS).flatMap(([name, right]) =>
    typeof right === 'object' && 'by' in right ? [[name, right] as const] : [],
  );
  expect(byChoice.length).toBeGreaterThanOrEqual(2);
  for (const [name, right] of byChoice) {
    expect(Object.keys(right.roles).toSorted(), name).toEqual(CHOICES[name]?.toSorted());
    for (const input of [{}, null, inputFor(name, 'toString'), inputFor(name, 'something else')]) {
      expect(admission(name as RequestName, input, [...ROLES])).toEqual({ is: 'refused', roles: [] });
    }
  }
});

test('what was really done is recorded by everyone', () => {
  const records: RequestName[] = [
    'event.recordTightening',
    'event.recordBreakout',
    'pass.record',
    'tool.check',
  ];
  for (const name of records) {
    for (const one of ROLES) expect(admission(name, {}, [one]).is, `${name} ${one}`).toBe('allowed');
  }
});

test('a step that is work is recorded by everyone, and a claim or decision is for the roles of the step', () => {
  for (const step of jointStep.options) {
    const { work, roles } = STEPS[step];
    for (const one of ROLES) {
      const may = work || roles.includes(one);
      const answer = admission('joint.step', { data: { step } }, [one]).is;
      expect(answer, `${step} ${one}`).toBe(may ? 'allowed' : 'refused');
    }
  }
});

test('roles add up', () => {
  expect(admission('setting.issue', {}, ['technician']).is).toBe('refused');
  expect(admission('setting.issue', {}, ['technician', 'engineer']).is).toBe('allowed');
});

describe('signing', () => {
  test('names stand in requests of the map, and nobody signs for another', () => {
    expect(Object.keys(SIGNERS).length).toBeGreaterThan(5);
    for (const [name, fields] of Object.entries(SIGNERS)) {
      expect(REQUEST_KINDS).toHaveProperty([name], 'write');
      for (const field of fields) {
        const named = (id: string) =>
          field.split('.').reduceRight<unknown>((inner, key) => ({ [key]: inner }), id);
        expect(signedForAnother(name as RequestName, named('a'), 'a')).toEqual([]);
        expect(signedForAnother(name as RequestName, named('b'), 'a')).toEqual([{ field, personId: 'b' }]);
      }
    }
  });

  test('a request without such a field, or with none named, signs for nobody', () => {
    expect(signedForAnother('joint.save', { personId: 'b' }, 'a')).toEqual([]);
    expect(signedForAnother('setting.issue', { personId: null }, 'a')).toEqual([]);
  });
});
