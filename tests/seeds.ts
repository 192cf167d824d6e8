import fc from 'fast-check';

/**
 * Property tests draw the same cases on every run, so that a landing doesn't hang on luck. New cases are looked for on
 * purpose: `STUDBOOK_TEST_SEED=random npx vitest run tests/laws` draws others and prints the seed of what it finds.
 */
const asked = process.env.STUDBOOK_TEST_SEED;
if (asked !== 'random') {
  const seed = Number(asked ?? 20261125);
  if (!Number.isInteger(seed))
    throw new Error(`STUDBOOK_TEST_SEED is "${asked}": allowed a whole number or random`);
  fc.configureGlobal({ seed });
}
