import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

/** The parts of the window, found as a person finds them: by what they are and what they are called. */
export const parts = (page: Page) => ({
  picture: page.getByRole('application', { name: 'Picture of punch, die and wire paths' }),
  rows: page.getByRole('list', { name: 'Review list' }).locator('> li'),
  row: (title: RegExp) =>
    page.getByRole('list', { name: 'Review list' }).locator('> li').filter({ hasText: title }),
  field: (label: string) => page.getByRole('textbox', { name: label, exact: true }),
  button: (name: string | RegExp) => page.getByRole('button', { name }),
  status: page.getByRole('status', { name: 'Done last' }),
});

/** A check that waits for the window to come round to it; build machines are slow. */
export const soon = (look: () => Promise<unknown>): ReturnType<typeof expect.poll> =>
  expect.poll(look, { timeout: 15_000 });

/** Types a value over the one in a field of the job line. */
export async function typeInto(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Enter');
}

/** Chooses from one of the job line's menus. */
export async function choose(page: Page, label: string, option: string | RegExp): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^${label}:`) }).click();
  await page.getByRole('menuitemradio', { name: option }).click();
}

/** Where the picture looks and how closely: centre in mm and pixels per mm. */
export async function viewOf(picture: Locator): Promise<{ x: number; y: number; scale: number }> {
  const [x, y] = ((await picture.getAttribute('data-centre')) ?? '').split(' ').map(Number);
  return { x: x ?? Number.NaN, y: y ?? Number.NaN, scale: Number(await picture.getAttribute('data-scale')) };
}

/** The whole pixel of the window nearest to a place of the drawing, and the place that it shows. */
export async function pixelOn(picture: Locator, place: { x: number; y: number }) {
  const exact = await pointOn(picture, place);
  const pixel = { x: Math.round(exact.x), y: Math.round(exact.y) };
  const { scale } = await viewOf(picture);
  const shows = {
    x: place.x + (pixel.x - exact.x) / scale,
    y: place.y - (pixel.y - exact.y) / scale,
  };
  return { pixel, shows };
}

/** The point of the window at which a place of the drawing is shown. */
export async function pointOn(picture: Locator, place: { x: number; y: number }) {
  const view = await viewOf(picture);
  // The window lays out in fractions of a pixel, the canvas has whole ones.
  const middle = await picture.evaluate((element) => {
    const { left, top } = element.getBoundingClientRect();
    return { x: left + element.clientWidth / 2, y: top + element.clientHeight / 2 };
  });
  return {
    x: middle.x + (place.x - view.x) * view.scale,
    y: middle.y - (place.y - view.y) * view.scale,
  };
}
