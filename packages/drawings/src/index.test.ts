import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const start = join(dirname(fileURLToPath(import.meta.url)), 'index.ts');

/** Every module that a file loads at run time, directly or through others; types are erased and do not count. */
function loadedFrom(file: string, seen: Set<string>): Set<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  const source = readFileSync(file, 'utf8');
  for (const [, clause = '', name = ''] of source.matchAll(/^(?:import|export)\s([^;]*?)from '([^']+)';/gm)) {
    if (clause.startsWith('type ')) continue;
    const next = name.startsWith('.') ? join(dirname(file), name) : name;
    if (existsSync(next)) loadedFrom(next, seen);
    else seen.add(name);
  }
  return seen;
}

describe('@gusset/drawings', () => {
  it('loads neither Node nor pdfkit: a browser can draw every scene and page', () => {
    const loaded = [...loadedFrom(start, new Set())];
    expect(loaded.length).toBeGreaterThan(25);
    expect(loaded.filter((name) => /^node:|pdfkit|\/pdf\/|\/testing\//.test(name))).toEqual([]);
  });
});
