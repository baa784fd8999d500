import { expect } from 'vitest';
import { openTestWindow } from './open-test-window';
import { windowTest } from './test-browser';

windowTest('the page starts from the local window without an error and under its policy', async () => {
  const { page, troubles } = await openTestWindow();
  await page.locator('#window > *').first().waitFor();
  expect(new URL(page.url()).search).toBe('');
  expect(await page.evaluate(() => document.cookie)).toBe('');
  expect(await page.evaluate('typeof require')).toBe('undefined');
  expect(troubles).toEqual([]);
});

windowTest('troubles of the page are seen by the tests', async () => {
  const { page, troubles } = await openTestWindow();
  await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.ran = true';
    document.head.append(script);
    console.error('seen');
  });
  await expect.poll(() => troubles.join('\n')).toContain('seen');
  // The policy lets no script run that stands in the page.
  expect(await page.evaluate('window.ran')).toBeUndefined();
  expect(troubles.join('\n')).toContain('Content Security Policy');
});
