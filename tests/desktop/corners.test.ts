import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { dxfOf } from '../support/dxf-of';
import { angleShape } from '../support/shapes';
import { openTestWindow } from './harness/open-test-window';
import { dropFile } from './harness/drop-file';
import { windowTest } from './harness/test-browser';
import { choose, parts, pointOn, soon, typeInto, viewOf } from './support/window-parts';

windowTest('a corner is clicked, filleted, matched, made sharp, and taken back', async () => {
  const { page, outFolder, picture: shoot, troubles } = await openTestWindow();
  const { picture, rows, row, field, button, status } = parts(page);
  const path = join(outFolder, 'bracket.dxf');
  writeFileSync(path, dxfOf([angleShape(10, 4)]));
  await dropFile(page, '.window', path);
  await rows.first().waitFor();
  const fillets = row(/Sharp inside corner of the die/);
  const before = await fillets.count();

  const at = await pointOn(picture, { x: 10, y: 0 });
  await page.mouse.click(at.x, at.y);
  const card = page.getByRole('dialog', { name: 'Corner' });
  await card.getByText('Contour c1, 90°, drawn sharp').waitFor();
  await shoot('corner-card');
  await choose(page, 'Inside corner of the die', /^filleted by/);
  await typeInto(field('Inside corner of the die, radius'), '0.5');
  await soon(() => fillets.count()).toBe(before - 1);
  // The rule for all leaves the punch sharp: the card offers the radius that keeps the clearance even, 0.5 less 0.06.
  await card.getByRole('button', { name: 'Punch r 0.44 mm' }).click();
  await card.getByText('The clearance is even here: 0.06 mm.').waitFor();
  await row(/A corner of the part is rounded/).waitFor();
  await shoot('corner-card-matched');

  // The corner above it is the next one.
  await button('Next corner').click();
  await choose(page, 'Wire round this corner', 'runs on, sharp');
  expect(await status.textContent()).toBe('Sharp path at a corner');
  await shoot('corner-card-sharp');

  await page.keyboard.press('Escape');
  await card.waitFor({ state: 'detached' });
  await button('All about corners').click();
  await page.getByRole('row', { name: /c1, x 10 y 0/ }).waitFor();
  await shoot('corners-panel');
  await page.getByRole('button', { name: 'As all others: c1, x 10 y 0' }).click();
  await soon(() => fillets.count()).toBe(before);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+z');
  await soon(() => fillets.count()).toBe(before - 1);
  expect(troubles).toEqual([]);
});

windowTest('corners without a mouse: C opens the nearest one, [ and ] step through them', async () => {
  const { page, outFolder } = await openTestWindow({ theme: 'dark' });
  const { picture, rows } = parts(page);
  const path = join(outFolder, 'bracket.dxf');
  writeFileSync(path, dxfOf([angleShape(10, 4)]));
  await dropFile(page, '.window', path);
  await rows.first().waitFor();
  await picture.focus();
  await page.keyboard.press('c');
  const card = page.getByRole('dialog', { name: 'Corner' });
  // The reflex corner is an inside one of the punch.
  await card.getByText('Inside corner of the punch').or(card.getByText('Punch, inside')).first().waitFor();
  await page.keyboard.press(']');
  await card.getByRole('rowheader', { name: 'Die, inside' }).waitFor();
  expect((await viewOf(picture)).scale).toBeGreaterThan(0);
});

windowTest('the cure of a finding rounds or fillets the one corner', async () => {
  const { page, outFolder } = await openTestWindow();
  const { row } = parts(page);
  const path = join(outFolder, 'bracket.dxf');
  writeFileSync(path, dxfOf([angleShape(10, 4)]));
  await dropFile(page, '.window', path);
  const fillets = row(/Sharp inside corner of the die/);
  await fillets.first().waitFor();
  const before = await fillets.count();
  await fillets
    .first()
    .getByRole('button', { name: /^Fillet of .* here$/ })
    .click();
  await soon(() => fillets.count()).toBe(before - 1);
});
