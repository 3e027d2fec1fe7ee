import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { woffToSfnt } from './woff-to-sfnt.ts';

const file = createRequire(import.meta.url).resolve(
  '@ibm/plex-mono/fonts/complete/woff/IBMPlexMono-Regular.woff',
);

/** Sum of a table's big-endian words, as OpenType counts its checksums. */
function tableSum(bytes: Uint8Array, offset: number, length: number): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  let sum = 0;
  for (let at = offset; at < offset + length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}

describe('woffToSfnt', () => {
  it('unpacks every table to the checksum that the font states for it', () => {
    const sfnt = woffToSfnt(readFileSync(file));
    const view = new DataView(sfnt.buffer);
    expect(view.getUint32(0)).toBe(0x00010000); // TrueType outlines
    const count = view.getUint16(4);
    expect(count).toBeGreaterThan(10);
    for (let index = 0; index < count; index += 1) {
      const entry = 12 + index * 16;
      const tag = String.fromCharCode(...sfnt.subarray(entry, entry + 4));
      if (tag === 'head') continue; // its own sum leaves one field out
      const [checksum, offset, length] = [
        view.getUint32(entry + 4),
        view.getUint32(entry + 8),
        view.getUint32(entry + 12),
      ];
      expect([tag, tableSum(sfnt, offset, length)]).toEqual([tag, checksum]);
    }
  });

  it('refuses what is not a WOFF font', () => {
    expect(() => woffToSfnt(new Uint8Array(64))).toThrow('Not a WOFF 1.0 font.');
  });
});
