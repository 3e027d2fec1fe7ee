// Times of day as minutes after midnight, typed and shown as a wall clock has them. Pure.
import { type Refusal, refuse } from '@gusset/units';

const DAY_MINUTES = 1_440;

/** `8`, `8:30`, `08.30`, `0830`; 24:00 is the end of the day. */
export function parseClock(text: string): number | Refusal {
  const typed = text.trim();
  const match = /^(\d{1,2})(?:[:.h](\d{2}))?$|^(\d{2})(\d{2})$/u.exec(typed);
  const hours = Number(match?.[1] ?? match?.[3]);
  const minutes = Number(match?.[2] ?? match?.[4] ?? 0);
  const total = hours * 60 + minutes;
  if (match === null || minutes > 59 || total > DAY_MINUTES) {
    return refuse('time', {
      allowed: '0:00 to 24:00',
      got: typed.slice(0, 20),
      why: 'Type a time of day such as 8:30.',
    });
  }
  return total;
}

export function formatClock(minute: number): string {
  return `${Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`;
}

export type Interval = { readonly fromMinute: number; readonly toMinute: number };

export function openMinutes(intervals: readonly Interval[]): number {
  return intervals.reduce((sum, { fromMinute, toMinute }) => sum + Math.max(0, toMinute - fromMinute), 0);
}
