import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Page } from 'playwright-core';

/** Drops a file onto the element the selector finds, as from a file manager. */
export async function dropFile(page: Page, selector: string, path: string): Promise<void> {
  const transfer = await page.evaluateHandle(
    ({ name, base64 }) => {
      const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
      const held = new DataTransfer();
      held.items.add(new File([bytes], name));
      return held;
    },
    { name: basename(path), base64: readFileSync(path).toString('base64') },
  );
  for (const type of ['dragenter', 'dragover', 'drop']) {
    await page.dispatchEvent(selector, type, { dataTransfer: transfer });
  }
  await transfer.dispose();
}
