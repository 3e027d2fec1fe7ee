import { describe, expect, it } from 'vitest';
import { textLines } from './text-lines.ts';

async function* chunked(...chunks: string[]) {
  yield* chunks;
}

async function linesOf(...chunks: string[]): Promise<string[]> {
  return gather(textLines(chunked(...chunks)));
}

async function gather<T>(values: AsyncIterable<T>): Promise<T[]> {
  const gathered: T[] = [];
  for await (const value of values) gathered.push(value);
  return gathered;
}

describe('textLines', () => {
  it('puts together a line that came in pieces', async () => {
    expect(await linesOf('{"a"', ':1}\n{"b":', '2}\n')).toEqual(['{"a":1}', '{"b":2}']);
  });

  it('takes a last line without its line feed', async () => {
    expect(await linesOf('one\ntwo')).toEqual(['one', 'two']);
  });

  it('leaves other line breaks inside a string alone', async () => {
    expect(await linesOf('"a\u2028b"\n')).toEqual(['"a\u2028b"']);
  });

  it('has no lines in nothing', async () => {
    expect(await linesOf()).toEqual([]);
  });
});
