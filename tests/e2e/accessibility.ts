import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

/** The page as it stands passes the accessibility check, which must have looked at something. */
export async function expectNoFaults(page: Page, where: string): Promise<void> {
  const { violations, passes } = await new AxeBuilder({ page }).analyze();
  expect(passes.length, `${where}: the accessibility check looked at something`).toBeGreaterThan(5);
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`),
    where,
  ).toEqual([]);
}
