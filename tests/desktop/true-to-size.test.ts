import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { openTestWindow } from './harness/open-test-window';
import { windowTest } from './harness/test-browser';
import { parts, pointOn, soon, viewOf } from './support/window-parts';

const spring = fileURLToPath(new URL('../../samples/rain-gauge-contact-spring.dxf', import.meta.url));

/** The pixels of the picture in a row to both sides of a place, as red, green and blue; all layers over the paper. */
const rowThrough = (page: Page, at: { x: number; y: number }, half: number): Promise<number[][]> =>
  page.evaluate(
    ([x, y, reach]) => {
      const row = document.createElement('canvas');
      row.width = 2 * reach + 1;
      row.height = 1;
      const context = row.getContext('2d');
      if (!context) throw new Error('no canvas');
      context.fillStyle = getComputedStyle(document.body).getPropertyValue('--paper');
      context.fillRect(0, 0, row.width, 1);
      for (const canvas of document.querySelectorAll('[role="application"] canvas')) {
        const { left, top } = canvas.getBoundingClientRect();
        const [fromX, fromY] = [Math.round(x - left) - reach, Math.round(y - top)];
        context.drawImage(canvas as HTMLCanvasElement, fromX, fromY, row.width, 1, 0, 0, row.width, 1);
      }
      const { data } = context.getImageData(0, 0, row.width, 1);
      return Array.from({ length: row.width }, (_, i) => [...data.slice(4 * i, 4 * i + 3)]);
    },
    [at.x, at.y, half] as const,
  );

/** The light theme's ink, #1e2327, within what smoothing makes of it. */
const isInk = (pixel: readonly number[] | undefined): boolean =>
  pixel !== undefined && [0x1e, 0x23, 0x27].every((value, i) => Math.abs((pixel[i] ?? 255) - value) < 24);

windowTest('the wire is drawn true to size, and what it has cut is gone', async () => {
  const { page, picture: shoot } = await openTestWindow({ file: spring, theme: 'light' });
  const { picture, rows } = parts(page);
  await rows.first().waitFor();
  await page.getByRole('tab', { name: 'Cut' }).click();
  const line = page.getByRole('option').filter({ hasText: /^\d+N8 G01/ });
  await line.click();
  await soon(() => page.getByRole('option', { selected: true }).textContent()).toMatch(/N8 G01/);
  const end = /X(-?[\d.]+) Y(-?[\d.]+)/.exec((await line.textContent()) ?? '');
  const place = { x: Number(end?.[1]), y: Number(end?.[2]) };
  const near = await pointOn(picture, place);
  await page.mouse.move(near.x, near.y);
  for (let i = 0; i < 4; i++) await page.mouse.wheel(0, -500);
  await soon(async () => (await viewOf(picture)).scale).toBeGreaterThan(150);
  await page.mouse.move(near.x - 300, near.y - 200);
  await shoot('replay-true-to-size');

  const { scale } = await viewOf(picture);
  const at = await pointOn(picture, place);
  const half = Math.ceil(0.4 * scale);
  const pixels = await rowThrough(page, at, half);
  let [left, right] = [half, half];
  expect(isInk(pixels[half])).toBe(true);
  while (isInk(pixels[left - 1])) left--;
  while (isInk(pixels[right + 1])) right++;
  // Wire of 0.25 mm; smoothing takes a pixel on each side.
  expect(right - left + 1).toBeGreaterThan(0.25 * scale - 4);
  expect(right - left + 1).toBeLessThan(0.25 * scale + 3);

  // The slit is cut as wide as wire and gaps, 0.29 mm: beside the wire stock is gone, beside the slit it stands.
  const color = (mm: number) => pixels[half + Math.round(mm * scale)]?.join();
  expect(color(0.21)).not.toBe(color(0.135));
});
