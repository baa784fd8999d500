import type { Page } from 'playwright-core';

/** Does what opens the page's file dialog and picks the file in it. */
export async function chooseFileInPage(page: Page, open: () => Promise<void>, path: string): Promise<void> {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), open()]);
  await chooser.setFiles(path);
}
