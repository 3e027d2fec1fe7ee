// The open streams of this process: who hears what, how many a person may have, and when a stream ends.
import type { LiveMessage, LiveNews } from './live-message.ts';

/** Screens that one person watches at once: a few tabs on a few devices. */
const MOST_STREAMS_A_PERSON = 12;

export type LiveStream = {
  readonly shopId: string;
  readonly userId: string;
  readonly sessionId: string;
  readonly send: (text: string) => void;
  readonly end: () => void;
};

export type LiveHub = {
  /** Null when the person has as many as allowed; else the way to take it out again. */
  join(stream: LiveStream): (() => void) | null;
  /** To the streams of its shop, and to no other. */
  tell(message: LiveMessage): void;
  /** Something may have been missed: every screen asks again. */
  tellMissed(): void;
  /** Keeps the proxies on the way from cutting a quiet stream. */
  beat(): void;
  /** Ends the streams whose sign-in is not among those that still hold. */
  endUnlessSignedIn(sessionIds: ReadonlySet<string>): void;
  /** Ends the streams of a shop whose person is not among its members. */
  endUnlessMember(shopId: string, userIds: ReadonlySet<string>): void;
  endAll(): void;
  streams(): readonly LiveStream[];
};

export function makeLiveHub(): LiveHub {
  const open = new Set<LiveStream>();
  const endWhere = (isOver: (stream: LiveStream) => boolean) => {
    for (const stream of [...open].filter(isOver)) {
      open.delete(stream); // first, so that nothing is sent behind its end
      stream.end();
    }
  };
  const sendAll = (text: string) => {
    for (const { send } of open) send(text);
  };
  return {
    join(stream) {
      const own = [...open].filter(({ userId }) => userId === stream.userId);
      if (own.length >= MOST_STREAMS_A_PERSON) return null;
      open.add(stream);
      return () => open.delete(stream);
    },
    tell({ shopId, act, noun, id }) {
      const news: LiveNews = { act, noun, id };
      const text = `data: ${JSON.stringify(news)}\n\n`;
      for (const stream of open) if (stream.shopId === shopId) stream.send(text);
    },
    tellMissed: () => sendAll('event: missed\ndata:\n\n'),
    beat: () => sendAll(':\n\n'),
    endUnlessSignedIn: (sessionIds) => endWhere(({ sessionId }) => !sessionIds.has(sessionId)),
    endUnlessMember: (shopId, userIds) =>
      endWhere((stream) => stream.shopId === shopId && !userIds.has(stream.userId)),
    endAll: () => endWhere(() => true),
    streams: () => [...open],
  };
}
