import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { canonicalText } from '../../core/audit/canonical.ts';
import { eventHash, NO_PREVIOUS } from '../../core/audit/chain.ts';
import { fromHex, toHex } from '../../core/audit/hash.ts';
import { merkleHead, merkleTreeHash } from '../../core/audit/merkle.ts';
import { sha256 } from '../../electron/service/chain/sha256.ts';

// Entries and tree hashes of the published Certificate Transparency reference tests, the tree of RFC 9162 2.1.1
// (unchanged from RFC 6962); exact.
const ENTRIES = [
  '',
  '00',
  '10',
  '2021',
  '3031',
  '40414243',
  '5051525354555657',
  '606162636465666768696a6b6c6d6e6f',
];
const ROOTS = [
  'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
  '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
  'fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125',
  'aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77',
  'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
  '4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4',
  '76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef',
  'ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c',
  '5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328',
];

test.each(ROOTS.map((root, count) => [count, root] as const))(
  'tree hash of the first %i entries',
  (count, root) => {
    const leaves = ENTRIES.slice(0, count).map(fromHex);
    expect(toHex(merkleTreeHash(sha256, leaves))).toBe(root);
  },
);

// RFC 8785, sections 3.2.2 and 3.2.3: the sample object and its canonical form.
test('canonical form of the sample of RFC 8785', () => {
  const sample = JSON.parse(
    String.raw`{"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false]}`,
  );
  expect(canonicalText(sample)).toBe(
    String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
  );
});

// RFC 8785, section 3.2.3: keys sorted by UTF-16 code units.
test('order of keys of the sorting sample of RFC 8785', () => {
  const sample = JSON.parse(
    String.raw`{"\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh",
      "1": "One", "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"}`,
  );
  expect(Object.values(JSON.parse(canonicalText(sample)) as Record<string, string>)).toHaveLength(7);
  const order = [...canonicalText(sample).matchAll(/":"([^"]+)"/g)].map(([, name]) => name);
  expect(order).toEqual([
    'Carriage Return',
    'One',
    'Control',
    'Latin Small Letter O With Diaeresis',
    'Euro Sign',
    'Emoji: Grinning Face',
    'Hebrew Letter Dalet With Dagesh',
  ]);
});

test.each([Number.NaN, Number.POSITIVE_INFINITY, '\ud800'])('%s has no canonical form', (value) => {
  expect(() => canonicalText({ value })).toThrow();
});

test('the link is SHA-256 over 0x02, the previous hash and the text', () => {
  const plain = createHash('sha256')
    .update(Buffer.concat([Buffer.of(2), Buffer.alloc(32), Buffer.from('{"a":"µ"}', 'utf8')]))
    .digest('hex');
  expect(eventHash(sha256, NO_PREVIOUS, '{"a":"µ"}')).toBe(plain);
});

test('the head does not depend on the order in which origins are listed', () => {
  const heads = ['b', 'a', 'c'].map((originId, index) => ({
    originId,
    sequence: index + 1,
    hash: '0'.repeat(64),
  }));
  expect(merkleHead(sha256, heads)).toBe(merkleHead(sha256, heads.toReversed()));
  expect(merkleHead(sha256, heads)).not.toBe(merkleHead(sha256, heads.slice(1)));
});
