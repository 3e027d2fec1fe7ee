import { describe, expect, it } from 'vitest';
import { addMessage, dropMessage, type ShopMessage } from './message-queue.ts';

const message = (id: number, text = `Message ${id}`): ShopMessage => ({
  id,
  text,
  tone: 'plain',
  undo: null,
});

describe('addMessage', () => {
  it('keeps the newest three in order', () => {
    const queue = [1, 2, 3, 4].map((id) => message(id)).reduce<readonly ShopMessage[]>(addMessage, []);
    expect(queue.map(({ id }) => id)).toEqual([2, 3, 4]);
  });

  it('replaces a message that says the same', () => {
    const queue = addMessage(addMessage([], message(1, 'Saved.')), message(2, 'Saved.'));
    expect(queue.map(({ id }) => id)).toEqual([2]);
  });
});

describe('dropMessage', () => {
  it('takes one away and leaves the rest', () => {
    expect(dropMessage([message(1), message(2)], 1).map(({ id }) => id)).toEqual([2]);
  });
});
