// The side view is a closed ring of corners and walls: the one after the last is the first.

/** The member at `index`, counted round the ring. Rings here are side views, never empty. */
export function ringAt<T>(ring: readonly T[], index: number): T {
  const member = ring[((index % ring.length) + ring.length) % ring.length];
  if (member === undefined) throw new RangeError('an empty ring has no members');
  return member;
}
