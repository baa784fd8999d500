import { describe, expect, it } from 'vitest';
import { commandList } from '../../../renderer/state/commands/command-list';
import { commandForKey, shortcutText, type KeyPress } from '../../../renderer/state/key-map';

const press = (key: string, held: Partial<KeyPress> = {}): KeyPress => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...held,
});
const find = (keyPress: KeyPress, isMac = false, isTyping = false) =>
  commandForKey(keyPress, commandList, isMac, isTyping)?.id;

describe('commandForKey', () => {
  it('finds commands by their keys', () => {
    expect(find(press('z', { ctrlKey: true }))).toBe('undo');
    expect(find(press('Z', { ctrlKey: true, shiftKey: true }))).toBe('redo');
    expect(find(press('y', { ctrlKey: true }))).toBe('redo');
    expect(find(press('f'))).toBe('fit');
    expect(find(press('n'))).toBe('next-finding');
    expect(find(press('N', { shiftKey: true }))).toBe('previous-finding');
  });

  it('takes signs with and without Shift, as keyboards have them', () => {
    expect(find(press('+', { shiftKey: true }))).toBe('zoom-in');
    expect(find(press('+'))).toBe('zoom-in');
    expect(find(press('?', { shiftKey: true }))).toBe('keys');
    expect(find(press('-'))).toBe('zoom-out');
  });

  it('uses the command key on a Mac', () => {
    expect(find(press('z', { metaKey: true }), true)).toBe('undo');
    expect(find(press('z', { ctrlKey: true }), true)).toBeUndefined();
    expect(find(press('z', { metaKey: true }), false)).toBeUndefined();
  });

  it('leaves plain keys to whoever is typing', () => {
    expect(find(press('f'), false, true)).toBeUndefined();
    expect(find(press('s', { ctrlKey: true }), false, true)).toBe('save');
  });

  it('leaves other combinations alone', () => {
    expect(find(press('f', { ctrlKey: true }))).toBeUndefined();
    expect(find(press('z', { ctrlKey: true, altKey: true }))).toBeUndefined();
  });
});

describe('the command list', () => {
  it('gives no two commands the same name or key', () => {
    const ids = commandList.map(({ id }) => id);
    const keys = commandList.flatMap(({ shortcuts }) => shortcuts);
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(keys).size).toBe(keys.length);
  });
});

describe('shortcutText', () => {
  it('prints keys as they are labelled', () => {
    expect(shortcutText('Mod+Shift+Z', false)).toBe('Ctrl+Shift+Z');
    expect(shortcutText('Mod+Shift+Z', true)).toBe('⌘⇧Z');
    expect(shortcutText('Plus', false)).toBe('+');
  });
});
