import styles from './box-section.module.css';

const OUTER = '118,-402 452,-372 584,0 0,0';
/** OUTER less a wall of 18 mm all round. */
const INNER = '131.1,-382.8 438.9,-355.1 558.5,-18.0 24.0,-18.0';
const BODY =
  'M-104 0L44 -514 134 -604 684 -580 676 -530 158 -552 96 -492 -48 0Z M-150 0H966V46H-150Z M892 0V-28H924V0Z';

function Ticked({
  from,
  to,
  text,
  at,
}: {
  from: [number, number];
  to: [number, number];
  text: string;
  at: [number, number];
}) {
  const tick = ([x, y]: [number, number]) => `M${x - 6} ${y + 6}L${x + 6} ${y - 6}`;
  return (
    <g>
      <path className={styles.thin} d={`M${from.join(' ')}L${to.join(' ')}`} />
      <path className={styles.tick} d={`${tick(from)}${tick(to)}`} />
      <text x={at[0]} y={at[1]}>
        {text}
      </text>
    </g>
  );
}

/** Side section of a box in the boot: walls and body hatched, two ghosts on the way out, the tightest point. */
export function BoxSection() {
  return (
    <svg className={styles.section} viewBox="-170 -640 1230 770" aria-hidden="true">
      <defs>
        <pattern
          id="hatch-board"
          width="11"
          height="11"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V11" className={styles.hatch} />
        </pattern>
        <pattern
          id="hatch-body"
          width="15"
          height="15"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <path d="M0 0V15" className={styles.hatch} />
        </pattern>
      </defs>
      <path d={BODY} fill="url(#hatch-body)" className={styles.medium} />
      <path className={styles.opening} d="M676 -530L908 -28" />

      <polygon points={OUTER} className={styles.ghost} transform="translate(214 -26) rotate(-8)" />
      <polygon points={OUTER} className={styles.ghostFar} transform="translate(452 -84) rotate(-15)" />
      <path className={styles.way} d="M330 -196C470 -214 600 -262 776 -330" />
      <path className={styles.arrow} d="M792 -337l-21 -1 8 15z" />

      <polygon points={OUTER} className={styles.board} />
      <path d={`M${OUTER}ZM${INNER}Z`} fillRule="evenodd" fill="url(#hatch-board)" className={styles.none} />
      <polygon points={OUTER} className={styles.thick} />
      <polygon points={INNER} fill="none" className={styles.medium} />

      <Ticked from={[0, 92]} to={[584, 92]} text="584" at={[274, 82]} />
      <path className={styles.thin} d="M0 14V100M584 56V100" />
      <Ticked from={[640, 0]} to={[640, -372]} text="402" at={[652, -190]} />
      <path className={styles.thin} d="M462 -372H650" />
      <Ticked from={[123, -436]} to={[456, -406]} text="334" at={[282, -434]} />

      <circle className={styles.point} cx="116" cy="-404" r="6" />
      <path className={styles.leader} d="M112 -408L40 -470H-28" />
      <text className={styles.pencilText} x="-150" y="-492">
        tightest 6.2
      </text>
      <text className={styles.pencilText} x="-150" y="-468">
        seat back
      </text>
      <text className={styles.markText} x="838" y="-206">
        opening 597
      </text>
      <text className={styles.quietText} x="236" y="-180">
        net 74.2 L
      </text>
    </svg>
  );
}
