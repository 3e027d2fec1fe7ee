// Keyboard shortcuts: how they are written, and when a key press is one. Pure.

export type Shortcut = {
  /** "?", "/", "mod+k", "mod+z", "g j" is not used: single letters never act while someone types. */
  readonly keys: string;
  readonly does: string;
};

export type KeyPress = {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
  /** True in a field, where plain keys are text. */
  readonly isTyping: boolean;
};

/** `mod` is Ctrl, or Cmd where the keyboard has one. */
export function matchesShortcut(press: KeyPress, keys: string): boolean {
  const names = keys.split('+');
  const key = names[names.length - 1] ?? '';
  const wantsMod = names.includes('mod');
  const wantsShift = names.includes('shift');
  const hasMod = press.ctrlKey || press.metaKey;
  if (press.altKey || wantsMod !== hasMod) return false;
  if (!wantsMod && press.isTyping) return false;
  // "?" needs Shift on most keyboards, so Shift counts only where a letter follows it.
  if (/^[a-z]$/u.test(key) && wantsShift !== press.shiftKey) return false;
  return press.key.toLowerCase() === key;
}

/** As printed on the keys: "Ctrl K" or "⌘ K". */
export function shortcutWords(keys: string, isApple: boolean): string {
  return keys
    .split('+')
    .map((name) => {
      if (name === 'mod') return isApple ? '⌘' : 'Ctrl';
      if (name === 'shift') return isApple ? '⇧' : 'Shift';
      return name.length === 1 ? name.toUpperCase() : name;
    })
    .join(' ');
}
