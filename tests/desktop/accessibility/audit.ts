import type { Page } from 'playwright-core';
import { lowContrast } from './low-contrast';
import { movingParts } from './moving-parts';
import { namelessControls } from './nameless-controls';
import { pageFaults } from './page-faults';
import { smallTargets } from './small-targets';
import { walkFocus } from './walk-focus';

/** Everything that keeps somebody from working in what the window shows now, in both themes; empty where there is nothing. */
export async function audit(page: Page, { walk = true } = {}): Promise<string[]> {
  // Nothing fades then, and every colour is read as it stays.
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const faults = [
    ...(await pageFaults(page)),
    ...(await namelessControls(page)),
    ...(await smallTargets(page)),
    ...(await movingParts(page)),
  ];
  for (const theme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme: theme });
    await page.locator(`html[data-theme="${theme}"]`).waitFor();
    faults.push(...(await lowContrast(page)).map((fault) => `${theme}: ${fault}`));
  }
  if (walk) faults.push(...(await walkFocus(page)));
  return faults;
}
