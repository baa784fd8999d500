import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { openTestWindow, type TestWindowOptions } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { parts, pointOn, soon } from './support/window-parts';

const spring = fileURLToPath(new URL('../../samples/rain-gauge-contact-spring.dxf', import.meta.url));

/** The parts of the replay, found as a person finds them. */
const replayParts = (page: Page) => ({
  clock: page.getByRole('slider', { name: 'Time of cutting' }),
  program: page.getByRole('listbox', { name: 'Program' }),
  line: (words: RegExp) => page.getByRole('option').filter({ hasText: words }),
  current: page.getByRole('option', { selected: true }),
  stop: (words: RegExp) =>
    page.getByRole('region', { name: 'Threadings and stops' }).getByRole('button', { name: words }),
});

async function openReplay(options: TestWindowOptions = {}) {
  const window = await openTestWindow({ file: spring, ...options });
  const { page } = window;
  await parts(page).rows.first().waitFor();
  await page.getByRole('tab', { name: 'Cut' }).click();
  await replayParts(page).program.waitFor();
  const { picture: takePicture, ...rest } = window;
  return { ...rest, takePicture, ...parts(page), ...replayParts(page) };
}

const secondsOf = async (clock: { getAttribute(name: string): Promise<string | null> }) =>
  Number(await clock.getAttribute('aria-valuenow'));

windowTest('the clock is driven by keys and buttons alone', async () => {
  const { page, clock, current, troubles, button } = await openReplay();
  // Stepping with the focus on the picture, as anywhere but in a field.
  await page.getByRole('application').focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await soon(() => current.textContent()).toMatch(/G01/);
  const second = await secondsOf(clock);
  await page.keyboard.press('ArrowRight');
  await soon(() => secondsOf(clock)).toBeGreaterThan(second);
  await page.keyboard.press('ArrowLeft');
  await soon(() => secondsOf(clock)).toBe(second);

  await page.keyboard.press('Space');
  await button('Pause').waitFor();
  await soon(() => secondsOf(clock)).toBeGreaterThan(second + 20);
  await page.keyboard.press('Space');
  await button('Play').waitFor();
  const stopped = await secondsOf(clock);
  await page.keyboard.press('PageDown');
  await soon(() => secondsOf(clock)).toBeGreaterThan(stopped);
  await page.getByRole('radio', { name: '1000 times as fast as it is cut' }).click();
  await button('Play').click();
  // To the end of the program and no farther.
  await soon(async () => (await secondsOf(clock)) === Number(await clock.getAttribute('aria-valuemax'))).toBe(
    true,
  );
  await button('Play').waitFor();
  expect(await button(/^Undo/).getAttribute('aria-disabled')).toBe('true');
  expect(troubles).toEqual([]);
});

windowTest('a line of the program shows its place, and a place its line', async () => {
  const { page, program, line, current, picture, clock } = await openReplay();
  // N7 goes to the corner of the finger's end (39.835, 3.559): the outline's corner less the rough cut's 0.165 mm.
  await line(/^\d+N7 G01/).click();
  await soon(() => current.textContent()).toMatch(/N7 G01 X39\.83500/);
  const first = await secondsOf(clock);
  // The arrow keys go on from there, line by line.
  await program.focus();
  await page.keyboard.press('ArrowDown');
  await soon(() => current.textContent()).toMatch(/N8 G01/);
  expect(await secondsOf(clock)).toBeGreaterThan(first);

  // The long upper edge of the finger is cut by N13 from (39.835, 6.441) to (14.866, 7.333), and by every skim.
  const at = await pointOn(picture, { x: 27.35, y: 6.887 });
  await page.mouse.move(at.x, at.y);
  const hovered = page.locator('[role="option"][data-hovered]');
  await page.evaluate(() => document.querySelector('[role="listbox"]')?.scrollTo(0, 0));
  await page.mouse.click(at.x, at.y);
  await soon(() => current.textContent()).toMatch(/G01 X(14\.8|39\.8)\d+ Y/);
  await soon(() => hovered.textContent()).toBe(await current.textContent());
});

windowTest('stops are listed and lead to their places', async () => {
  const { stop, current, clock } = await openReplay();
  await stop(/^Secure the slug/).click();
  await soon(() => current.textContent()).toMatch(/M00 \(SECURE THE SLUG/);
  const secured = await secondsOf(clock);
  await stop(/^Cut the wire and take the slug out/).click();
  await soon(() => secondsOf(clock)).toBeGreaterThan(secured);
});

for (const theme of ['light', 'dark'] as const) {
  windowTest(`pictures of the replay, ${theme}`, async () => {
    const { page, clock, stop, picture, takePicture, line, troubles } = await openReplay({ theme });
    await clock.focus();
    for (let i = 0; i < 12; i++) await page.keyboard.press('ArrowRight');
    await takePicture(`replay-roughing-${theme}`);
    // Near enough to see wire, slit and path.
    await line(/^\d+N8 G01/).click();
    const at = await pointOn(picture, { x: 39.835, y: 4.735 });
    await page.mouse.move(at.x, at.y);
    for (let i = 0; i < 4; i++) await page.mouse.wheel(0, -500);
    await page.mouse.move(at.x - 300, at.y - 150);
    await takePicture(`replay-near-${theme}`);
    await page.keyboard.press('f');
    await stop(/^Cut the wire and take the slug out/).click();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await takePicture(`replay-slug-out-${theme}`);
    expect(troubles).toEqual([]);
  });
}
