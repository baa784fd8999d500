import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { parts } from './support/window-parts';

const spring = fileURLToPath(new URL('../../samples/rain-gauge-contact-spring.dxf', import.meta.url));

/** The parts of the replay, found as a person finds them. */
const replayParts = (page: Page) => ({
  clock: page.getByRole('slider', { name: 'Time of cutting' }),
  program: page.getByRole('listbox', { name: 'Program' }),
  current: page.getByRole('listbox', { name: 'Program' }).locator('[aria-selected="true"]'),
  pauses: page.getByRole('region', { name: 'Threadings and stops' }).getByRole('button'),
});

for (const theme of ['light', 'dark'] as const) {
  windowTest(`pictures of the replay, ${theme}`, async () => {
    const { page, picture, troubles } = await openTestWindow({ file: spring, theme });
    await parts(page).rows.first().waitFor();
    await page.getByRole('tab', { name: 'Cut' }).click();
    const { clock, program } = replayParts(page);
    await program.waitFor();
    await clock.focus();
    await picture(`replay-start-${theme}`);
    for (let i = 0; i < 12; i++) await page.keyboard.press('ArrowRight');
    await picture(`replay-middle-${theme}`);
    expect(troubles).toEqual([]);
  });
}
