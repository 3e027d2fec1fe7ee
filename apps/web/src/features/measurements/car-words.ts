// The sentences of a measured car.
import {
  type CarTransferView,
  FIRING_WORDS,
  type SweepView,
  type TransferAnswer,
  type TransferCurve,
} from '@gusset/contracts/measurement';

/** Where a bass box earns its keep. */
const SPOKEN_HZ = [30, 50] as const;

/** "boot, left, firing rearward". */
export function placeName(sweep: Pick<SweepView, 'place' | 'direction'> | undefined): string {
  if (sweep === undefined) return 'sweep';
  const place = sweep.place === '' ? 'place not said' : sweep.place;
  return sweep.direction === null ? place : `${place}, ${FIRING_WORDS[sweep.direction]}`;
}

export type LetteredSweep = { readonly letter: string; readonly sweep: SweepView };

/** Oldest first, A, B, C; rejected ones last, so that what counts stands on top. */
export function lettered(
  sweeps: readonly SweepView[],
  answer: Pick<TransferAnswer, 'sweeps'> | null,
): readonly LetteredSweep[] {
  const isRejected = ({ id }: SweepView) =>
    answer?.sweeps.some((laid) => laid.id === id && laid.rejection !== null) ?? false;
  const oldestFirst = [...sweeps].reverse(); // the API lists the newest first
  return [...oldestFirst.filter((sweep) => !isRejected(sweep)), ...oldestFirst.filter(isRejected)].map(
    (sweep, i) => ({ letter: i < 26 ? String.fromCharCode(65 + i) : String(i + 1), sweep }),
  );
}

/** Gain at the nearest point; null outside the valid band. */
export function gainAt(
  { points, validLowHz, validHighHz }: TransferCurve,
  frequencyHz: number,
): number | null {
  if (frequencyHz < validLowHz || frequencyHz > validHighHz) return null;
  const nearest = points.reduce<TransferCurve['points'][number] | null>(
    (best, point) =>
      best === null ||
      Math.abs(Math.log(point.frequencyHz / frequencyHz)) < Math.abs(Math.log(best.frequencyHz / frequencyHz))
        ? point
        : best,
    null,
  );
  return nearest?.gainDb ?? null;
}

export type CarVerdict = {
  readonly tone: 'pass' | 'check' | 'note';
  readonly words: string;
  readonly detail: string;
};

/** What the car adds; of what is worked out now, else of what was kept. */
export function transferVerdict(now: TransferCurve | null, kept: CarTransferView | null): CarVerdict {
  const curve = now ?? kept?.curve ?? null;
  if (curve === null) {
    return {
      tone: 'note',
      words: 'Not measured: jobs use an estimate',
      detail: 'The estimate comes from the longest inside length; real cars differ from it by 5 to 10 dB.',
    };
  }
  const gains = SPOKEN_HZ.flatMap((hz) => {
    const gain = gainAt(curve, hz);
    return gain === null
      ? []
      : [`${gain < 0 ? 'takes' : 'adds'} ${Math.abs(gain).toFixed(0)} dB at ${hz} Hz`];
  });
  const says = gains.length === 0 ? 'is measured' : gains.join(', ');
  const level =
    curve.level.by === 'near-cone'
      ? 'Level by a sweep near the cone.'
      : 'No sweep near the cone: the level is set by the upper end of the band.';
  const noise =
    curve.worstSnrDb === null
      ? 'Noise was not measured.'
      : `At least ${curve.worstSnrDb.toFixed(0)} dB above the noise.`;
  return {
    tone: now === null ? 'pass' : 'check',
    words: `This car ${says}${now === null ? '' : ', not kept yet'}`,
    detail: `${level} ${noise}`,
  };
}

/** Which sweeps stand beside those in the car. */
export function besideWords(
  used: {
    readonly nearConeId: string | null;
    readonly noiseId: string | null;
    readonly calibrationId: string | null;
  } | null,
): string {
  if (used === null) return 'Choose the sweeps to lay over each other.';
  const has = [
    used.nearConeId === null ? 'no sweep near the cone of this box' : 'a sweep near the cone',
    used.noiseId === null ? 'no noise sweep, so nothing is rejected for noise' : 'a noise sweep',
    used.calibrationId === null ? 'no microphone calibration' : 'the microphone’s calibration',
  ];
  return `Beside them: ${has.join('; ')}.`;
}
