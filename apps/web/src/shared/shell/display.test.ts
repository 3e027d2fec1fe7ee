import { describe, expect, it } from 'vitest';
import { DISPLAY_COOKIES, type Display, displayCookies, readDisplay } from './display.ts';

const readBack = (display: Display): Display => {
  const jar = new Map(
    displayCookies(display).map((line) => {
      const [name = '', value = ''] = (line.split(';')[0] ?? '').split('=');
      return [name, value];
    }),
  );
  return readDisplay((name) => jar.get(name));
};

describe('display cookies', () => {
  it('come back as they were written', () => {
    for (const display of [
      { theme: 'night', unit: 'in', bench: true },
      { theme: 'device', unit: null, bench: false },
    ] as const) {
      expect(readBack(display)).toEqual(display);
    }
  });

  it('fall back to the device and the shop when they hold nonsense', () => {
    const read = readDisplay((name) => (name === DISPLAY_COOKIES.theme ? 'neon' : undefined));
    expect(read).toEqual({ theme: 'device', unit: null, bench: false });
  });
});
