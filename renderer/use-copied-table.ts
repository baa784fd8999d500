import { useEffect } from 'react';
import type { App } from './state/app-store';
import { isTypingIn } from './state/key-map';

/**
 * Copying with nothing selected takes the table that has the focus, or the one under the pointer, with tabs between its
 * cells as spreadsheets take it, typed values included.
 */
export function useCopiedTable(app: App): void {
  useEffect(() => {
    const onCopy = (event: ClipboardEvent) => {
      const isSelected = (document.getSelection()?.toString() ?? '') !== '';
      const { activeElement } = document;
      if (isSelected || isTypingIn(activeElement)) return;
      const table =
        activeElement?.closest('table') ?? document.querySelector<HTMLTableElement>('table:hover');
      if (!table || !event.clipboardData) return;
      const lines = [...table.rows].map((row) => [...row.cells].map(cellText).join('\t'));
      event.clipboardData.setData('text/plain', `${lines.join('\n')}\n`);
      event.preventDefault();
      app.store.setState({ said: `Copied a table of ${lines.length} lines` });
    };
    window.addEventListener('copy', onCopy);
    return () => window.removeEventListener('copy', onCopy);
  }, [app]);
}

/** What the cell reads: words, values in fields, and x for a tick. */
function cellText(cell: HTMLTableCellElement): string {
  const parts: string[] = [];
  const nodes = document.createTreeWalker(cell, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
  for (let node = nodes.nextNode(); node; node = nodes.nextNode()) {
    if (node instanceof Text) parts.push(node.data);
    else if (node instanceof HTMLInputElement) parts.push(valueOf(node));
  }
  return parts.join('').replaceAll(/\s+/g, ' ').trim();
}

const valueOf = (input: HTMLInputElement): string =>
  input.type === 'checkbox' ? (input.checked ? 'x ' : '') : input.value;
