import { expect, type Locator, type Page } from '@playwright/test';

const MOST_PRESSES = 160;

/** Presses Tab, or Shift and Tab for what stands before, until the element has the focus: no mouse is used. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  await expect(target).toBeVisible();
  const back = await target.evaluate((element) => {
    const from = document.activeElement;
    if (from === null || from === document.body) return false;
    return (from.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_PRECEDING) !== 0;
  });
  for (let press = 0; press < MOST_PRESSES; press++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press(back ? 'Shift+Tab' : 'Tab');
  }
  await expect(target).toBeFocused();
}
