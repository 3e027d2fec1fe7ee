import { formatClock, type Interval } from './clock-time.ts';
import styles from './week-drawing.module.css';

export type WeekDrawingProps = {
  readonly days: readonly string[];
  readonly week: readonly (readonly Interval[])[];
};

const LEFT = 44;
/** Half of the last hour's figure. */
const RIGHT = 22;
const ROW = 26;
const TOP = 24;
const WIDTH = 720;
const DAY_MINUTES = 1_440;
const HOUR_MARKS = [0, 4, 8, 12, 16, 20, 24] as const;

/** The week as bars over the hours of a day; the same hours stand in the fields below. */
export function WeekDrawing({ days, week }: WeekDrawingProps) {
  const xOf = (minute: number) => LEFT + (minute / DAY_MINUTES) * (WIDTH - LEFT - RIGHT);
  const height = TOP + days.length * ROW + 6;
  return (
    <svg className={styles.week} viewBox={`0 0 ${WIDTH} ${height}`} aria-hidden="true">
      {HOUR_MARKS.map((hour) => (
        <g key={hour}>
          <path className={styles.hour} d={`M${xOf(hour * 60)} ${TOP - 6}V${height - 6}`} />
          <text className={styles.figure} x={xOf(hour * 60)} y={TOP - 10}>
            {formatClock(hour * 60)}
          </text>
        </g>
      ))}
      {days.map((day, index) => (
        <g key={day}>
          <text className={styles.name} x={0} y={TOP + index * ROW + 17}>
            {day.slice(0, 3)}
          </text>
          {(week[index] ?? []).map(({ fromMinute, toMinute }) => (
            <rect
              key={`${fromMinute}-${toMinute}`}
              className={styles.open}
              x={xOf(fromMinute)}
              y={TOP + index * ROW + 4}
              width={Math.max(0, xOf(toMinute) - xOf(fromMinute))}
              height={ROW - 9}
            />
          ))}
        </g>
      ))}
    </svg>
  );
}
