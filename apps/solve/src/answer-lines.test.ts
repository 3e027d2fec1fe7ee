import { refuse } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { answerLines } from './answer-lines.ts';
import type { SolveEngine } from './engine.ts';

const inputSchema = z.strictObject({
  id: z.string(),
  litres: z.number().positive(),
  pause: z.number().default(0),
});
const halves: SolveEngine<z.infer<typeof inputSchema>, unknown> = {
  name: 'halves',
  inputSchema,
  outputSchema: z.strictObject({ id: z.string(), half: z.number(), seed: z.number() }),
  async solve({ litres, pause }, { seed }) {
    await new Promise((resolve) => setTimeout(resolve, pause));
    if (litres === 13) throw new Error('unlucky');
    if (litres > 100)
      return refuse('litres', { allowed: 'up to 100', got: litres, why: 'too large to halve' });
    return { half: litres / 2, seed };
  },
};

async function* each(lines: readonly string[]) {
  yield* lines;
}

async function answersTo(...lines: string[]) {
  const answers = await gather(answerLines(halves, each(lines), { seconds: 1, seed: 5 }));
  return answers.map(({ text, ...rest }) => ({ ...rest, document: JSON.parse(text) }));
}

async function gather<T>(values: AsyncIterable<T>): Promise<T[]> {
  const gathered: T[] = [];
  for await (const value of values) gathered.push(value);
  return gathered;
}

describe('answerLines', () => {
  it('answers each document with its id, in order, however long each takes', async () => {
    const answers = await answersTo('{"id":"slow","litres":8,"pause":20}', '{"id":"quick","litres":4}');
    expect(answers).toEqual([
      { document: { id: 'slow', half: 4, seed: 5 }, isRefused: false, failure: null },
      { document: { id: 'quick', half: 2, seed: 5 }, isRefused: false, failure: null },
    ]);
  });

  it('puts a refusal on the line of its document and answers the others', async () => {
    const answers = await answersTo(
      '{"id":"a","litres":0}',
      '{"id":"b","litres":101}',
      '{"id":"c","litres":2}',
    );
    expect(answers.map(({ isRefused }) => isRefused)).toEqual([true, true, false]);
    expect(answers[0]?.document).toMatchObject({ id: 'a', refusal: { field: 'litres', got: 0 } });
    expect(answers[1]?.document).toEqual({
      id: 'b',
      refusal: { field: 'litres', allowed: 'up to 100', got: 101, why: 'too large to halve' },
    });
  });

  it('refuses a line that is not JSON by its number, without an id', async () => {
    const [first, second] = await answersTo('', '{"id":');
    expect(first?.document).toEqual({
      id: null,
      refusal: {
        field: '',
        allowed: 'one JSON document a line',
        got: '{"id":',
        why: 'line 2 is not JSON',
      },
    });
    expect(second).toBeUndefined();
  });

  it.each(['null', '3', '[1]'])('refuses %s, which is JSON and no document', async (line) => {
    const [answer] = await answersTo(line);
    expect(answer?.isRefused).toBe(true);
    expect(answer?.document).toMatchObject({ id: null });
  });

  it('hands on a fault of the engine and still answers the rest', async () => {
    const [broken, fine] = await answersTo('{"id":"a","litres":13}', '{"id":"b","litres":2}');
    expect(broken).toMatchObject({ isRefused: true, failure: { message: 'unlucky' } });
    expect(broken?.document).toMatchObject({ id: 'a', refusal: { why: 'the halves engine failed on it' } });
    expect(fine?.document).toEqual({ id: 'b', half: 1, seed: 5 });
  });
});
