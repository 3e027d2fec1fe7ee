import { describe, expect, it } from 'vitest';
import { type Asked, createLatestWins } from './latest-wins.ts';

const begin = () => {
  const posted: Asked<string>[] = [];
  return { posted, latest: createLatestWins<string>((asked) => posted.push(asked)) };
};

describe('createLatestWins', () => {
  it('posts the first question at once', () => {
    const { posted, latest } = begin();
    latest.ask('584 mm');
    expect(posted).toEqual([{ id: 1, request: '584 mm' }]);
  });

  it('drops all but the newest of what was asked meanwhile', () => {
    const { posted, latest } = begin();
    for (const width of ['584', '585', '586', '587']) latest.ask(width);
    expect(posted).toHaveLength(1);
    expect(latest.answered(1)).toBe(true);
    expect(posted.map(({ request }) => request)).toEqual(['584', '587']);
    expect(latest.answered(2)).toBe(true);
    expect(latest.isBusy()).toBe(false);
  });

  it('does not show an answer to something that was stopped', () => {
    const { latest } = begin();
    latest.ask('slow');
    latest.ask('quick');
    latest.stopped();
    expect(latest.answered(1)).toBe(false);
    expect(latest.answered(2)).toBe(true);
  });
});
