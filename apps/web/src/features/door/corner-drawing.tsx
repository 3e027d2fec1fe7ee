import styles from './corner-drawing.module.css';

/** Two 18 mm boards meeting at a right angle, braced by a gusset of 120 × 120: what the program is named after. */
export function CornerDrawing() {
  return (
    <svg
      className={styles.drawing}
      viewBox="-70 -300 420 400"
      role="img"
      aria-label="Two boards meeting at a corner, braced by a triangular gusset of 120 by 120 mm"
    >
      <defs>
        <pattern
          id="hatch-corner"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V6" className={styles.hatch} />
        </pattern>
        <pattern
          id="hatch-gusset"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <path d="M0 0V6" className={styles.hatch} />
        </pattern>
      </defs>
      <path className={styles.construction} d="M18 -290V60M-50 -18H330M-34 -190L210 54" />
      <path className={styles.board} fill="url(#hatch-corner)" d="M0 -260H18V0H0Z" />
      <path className={styles.board} fill="url(#hatch-corner)" d="M18 -18H280V0H18Z" />
      <path className={styles.gusset} fill="url(#hatch-gusset)" d="M18 -18V-138L138 -18Z" />
      <g className={styles.dimension}>
        <path d="M18 6V50M138 -12V50M18 42H138" />
        <path className={styles.tick} d="M14 46l8 -8M134 46l8 -8" />
        <text x="64" y="36">
          120
        </text>
        <path d="M-4 -138H-46M-4 -18H-46M-38 -138V-18" />
        <path className={styles.tick} d="M-42 -134l8 -8M-42 -14l8 -8" />
        <text x="-66" y="-72">
          120
        </text>
        <path d="M0 -268V-288M18 -268V-288M-16 -280H34" />
        <path className={styles.tick} d="M-4 -276l8 -8M14 -276l8 -8" />
        <text x="38" y="-276">
          18
        </text>
      </g>
      <path className={styles.leader} d="M84 -84L136 -150H150" />
      <text className={styles.note} x="154" y="-146">
        gusset, glued
      </text>
      <text className={styles.note} x="154" y="-130">
        grain along the long edge
      </text>
    </svg>
  );
}
