import type { Command } from './command';

/** What of a key press a shortcut depends on. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

/** The command that a key press asks for; undefined where there is none. While someone types, only Mod keys count. */
export function commandForKey(
  press: KeyPress,
  commands: readonly Command[],
  isMac: boolean,
  isTyping: boolean,
): Command | undefined {
  const mod = isMac ? press.metaKey : press.ctrlKey;
  if (press.altKey || (isTyping && !mod)) return undefined;
  if (isMac ? press.ctrlKey : press.metaKey) return undefined;
  return commands.find((command) => command.shortcuts.some((shortcut) => matches(shortcut, press, mod)));
}

/** A shortcut as it is printed on the keys, e.g. "Ctrl+Shift+Z" or "⌘⇧Z". */
export function shortcutText(shortcut: string, isMac: boolean): string {
  const keys = shortcut
    .split('+')
    .map((key) => (isMac ? (macKeys[key] ?? key) : key === 'Mod' ? 'Ctrl' : key));
  return keys.map((key) => printedKeys[key] ?? key).join(isMac ? '' : '+');
}

/** Whether the page runs on a Mac. */
export const isMacPage = (page: Window): boolean => /mac/i.test(page.navigator.platform);

/** Whether a key press belongs to what has the focus: Space presses a button, arrows move within lists, tabs and sliders. */
export function isOwnKey(target: EventTarget | null, key: string): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (key === ' ') return target.matches('button, a, summary, [role="menuitem"], [role="option"]');
  return key.startsWith('Arrow') && target.matches('[role="tab"], [role="radio"], [role="menuitem"]');
}

/** Whether a key press goes into something a person types in. */
export function isTypingIn(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.matches('input:not([type="checkbox"]), textarea, select, [contenteditable="true"]');
}

const printedKeys: Readonly<Record<string, string>> = {
  Plus: '+',
  ArrowLeft: '←',
  ArrowRight: '→',
  PageUp: 'Page up',
  PageDown: 'Page down',
};

/** Keys whose name here is not what the browser calls them. */
const namedKeys: Readonly<Record<string, string>> = { Plus: '+', Space: ' ' };

const macKeys: Readonly<Record<string, string>> = { Mod: '⌘', Shift: '⇧' };

function matches(shortcut: string, press: KeyPress, mod: boolean): boolean {
  const keys = shortcut.split('+');
  const last = keys.at(-1) ?? '';
  const wanted = namedKeys[last] ?? last;
  if (keys.includes('Mod') !== mod) return false;
  if (wanted.toLowerCase() !== press.key.toLowerCase()) return false;
  // Signs such as ? and + need Shift on some keyboards and not on others.
  const isSign = wanted.length === 1 && wanted.toLowerCase() === wanted.toUpperCase();
  return isSign || keys.includes('Shift') === press.shiftKey;
}
