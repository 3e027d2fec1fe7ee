// Short messages after an act, oldest first. Pure: the component owns the clock.

export type ShopMessage = {
  readonly id: number;
  /** What happened: "Brace removed." */
  readonly text: string;
  readonly tone: 'plain' | 'trouble';
  readonly undo: (() => void) | null;
};

/** More than three at once are not read; the oldest gives way. */
const SHOWN_AT_ONCE = 3;

export function addMessage(queue: readonly ShopMessage[], message: ShopMessage): readonly ShopMessage[] {
  return [...queue.filter((shown) => shown.text !== message.text), message].slice(-SHOWN_AT_ONCE);
}

export function dropMessage(queue: readonly ShopMessage[], id: number): readonly ShopMessage[] {
  return queue.filter((message) => message.id !== id);
}
