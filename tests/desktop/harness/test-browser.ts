import { test } from 'vitest';
import { findBrowser, installBrowserHint } from '../../../electron/local-window/find-browser';

/** Where this is set, a missing browser fails the tests that need it: a build machine must not skip them unseen. */
const browserRequired = process.env['DIEWRIGHT_REQUIRE_BROWSER'] === '1';

/** The machine's browser; throws with the line that installs one. */
export function testBrowser(): string {
  const browser = findBrowser();
  if (browser === null) throw new Error(installBrowserHint);
  return browser;
}

const missing = findBrowser() === null && !browserRequired;
if (missing) console.log(`Window tests are skipped. ${installBrowserHint}`);

/** `test` for tests that need a browser: skipped where there is none, or failing where one is required. */
export const windowTest: (name: string, run: () => Promise<void>) => void = missing ? test.skip : test;
