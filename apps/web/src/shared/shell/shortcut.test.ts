import { describe, expect, it } from 'vitest';
import { type KeyPress, matchesShortcut, shortcutWords } from './shortcut.ts';

const press = (key: string, held: Partial<KeyPress> = {}): KeyPress => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  isTyping: false,
  ...held,
});

describe('matchesShortcut', () => {
  it('takes Ctrl or Cmd for mod', () => {
    expect(matchesShortcut(press('k', { ctrlKey: true }), 'mod+k')).toBe(true);
    expect(matchesShortcut(press('k', { metaKey: true }), 'mod+k')).toBe(true);
    expect(matchesShortcut(press('k'), 'mod+k')).toBe(false);
  });

  it('leaves plain keys alone while someone types', () => {
    expect(matchesShortcut(press('/'), '/')).toBe(true);
    expect(matchesShortcut(press('/', { isTyping: true }), '/')).toBe(false);
    expect(matchesShortcut(press('?', { shiftKey: true, isTyping: true }), '?')).toBe(false);
  });

  it('works with mod even in a field', () => {
    expect(matchesShortcut(press('k', { ctrlKey: true, isTyping: true }), 'mod+k')).toBe(true);
  });

  it('tells undo from redo by Shift', () => {
    const redo = press('Z', { ctrlKey: true, shiftKey: true });
    expect(matchesShortcut(redo, 'mod+z')).toBe(false);
    expect(matchesShortcut(redo, 'mod+shift+z')).toBe(true);
  });

  it('takes a question mark with the Shift it needs', () => {
    expect(matchesShortcut(press('?', { shiftKey: true }), '?')).toBe(true);
  });
});

describe('shortcutWords', () => {
  it('prints what stands on the keys', () => {
    expect(shortcutWords('mod+k', false)).toBe('Ctrl K');
    expect(shortcutWords('mod+shift+z', true)).toBe('⌘ ⇧ Z');
  });
});
