import { expect, type Locator, type Page } from '@playwright/test';

const MOST_PRESSES = 160;
const IN_ORDER = 'a[href], button, input, select, textarea, summary, [tabindex="0"]';

/** Presses Tab, or Shift and Tab for what stands before, until the element has the focus: no mouse is used. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  await expect(target).toBeVisible();
  const away = await target.evaluate(stepsAway, IN_ORDER);
  const key = away < 0 ? 'Shift+Tab' : 'Tab';
  // Nearly there without asking after each key; where the order is another, the rest is found one by one.
  for (let press = 0; press < Math.abs(away) - 2; press++) await page.keyboard.press(key);
  for (let press = 0; press < MOST_PRESSES; press++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press(key);
  }
  await expect(target).toBeFocused();
}

/** How many elements that take the focus lie between; below 0 for one that stands before. */
function stepsAway(element: Element, selector: string): number {
  const stops = [...document.querySelectorAll<HTMLElement>(selector)].filter(
    (stop) =>
      stop.checkVisibility() && !stop.matches(':disabled, [type="radio"]:not(:checked), [tabindex="-1"]'),
  );
  const place = (of: Element | null) =>
    stops.findIndex(
      (stop) =>
        of !== null &&
        (stop === of || (stop.compareDocumentPosition(of) & Node.DOCUMENT_POSITION_PRECEDING) !== 0),
    );
  return place(element) - place(document.activeElement);
}

/** Types into a field, or over the first letters of a choice, after moving there by Tab. */
export async function typeInto(page: Page, label: string, text: string): Promise<void> {
  await tabTo(page, page.getByLabel(label, { exact: true }));
  await page.keyboard.type(text);
}

/** Presses a key on a button, a link or a box after moving there by Tab. */
export async function pressOn(
  page: Page,
  role: 'button' | 'link' | 'radio' | 'checkbox',
  name: string | RegExp,
  key = 'Enter',
): Promise<void> {
  await tabTo(page, page.getByRole(role, { name }).first());
  await page.keyboard.press(key);
}
