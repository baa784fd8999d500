import type { Page } from 'playwright-core';

/**
 * Controls, pictures and headings that have no name, and places that take the focus without being anything, by the
 * browser's own accessibility tree (Accessible Name and Description Computation 1.2; WCAG 2.2, 4.1.2 and 1.1.1).
 */
export async function namelessControls(page: Page): Promise<string[]> {
  const session = await page.context().newCDPSession(page);
  const { nodes } = await session.send('Accessibility.getFullAXTree');
  const faults: string[] = [];
  for (const { ignored, role, name, properties, backendDOMNodeId: id } of nodes) {
    if (ignored || id === undefined) continue;
    const kind = String(role?.value ?? '');
    const isFocusable =
      properties?.some((one) => one.name === 'focusable' && one.value.value === true) ?? false;
    const isNothing = kind === 'generic' || kind === 'none';
    if (isFocusable && isNothing) {
      const what = await describe(id);
      // The library's guards at both ends of a dialog hand the focus on at once.
      if (!what.includes('data-radix-focus-guard')) faults.push(`takes the focus without a role: ${what}`);
    }
    const hasName = String(name?.value ?? '').trim() !== '';
    if ((needName.has(kind) || (isFocusable && !isNothing)) && !hasName) {
      faults.push(`${kind} without a name: ${await describe(id)}`);
    }
  }
  await session.detach();
  return faults;

  async function describe(backendNodeId: number): Promise<string> {
    const { node } = await session.send('DOM.describeNode', { backendNodeId });
    return `${node.localName} ${(node.attributes ?? []).join(' ')}`;
  }
}

/** Roles whose name comes from the author or from content and may not be missing (WAI-ARIA 1.2, "Accessible Name Required"). */
const needName: ReadonlySet<string> = new Set([
  ...['application', 'button', 'checkbox', 'combobox', 'dialog', 'alertdialog', 'heading', 'image', 'img'],
  ...['link', 'listbox', 'menuitem', 'menuitemcheckbox', 'menuitemradio', 'meter', 'option', 'progressbar'],
  ...['radio', 'radiogroup', 'region', 'searchbox', 'slider', 'spinbutton', 'switch', 'tab', 'tabpanel'],
  ...['table', 'textbox', 'tree', 'treeitem'],
]);
