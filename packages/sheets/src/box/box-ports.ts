// The ports that sheet 03 asks for, as this sheet builds them: pipes and slots through the baffle.
import type { BoxInput } from '@gusset/contracts/box';
import type { BoxDesign } from '@gusset/contracts/enclosure';
import type { SoundPortResult, SoundResult } from '@gusset/contracts/sound';

type BoxPorts = BoxDesign['ports'];

/** A slot as wide as the inside to this is meant to go from side to side. */
const WHOLE_WIDTH_MM = 1;

/** Slots lie on the floor; in a top baffle, along the front. */
const alongOf = ({ baffle }: BoxInput) => (baffle.face === 'top' ? 'front' : 'bottom');

function slots(port: SoundPortResult, input: BoxInput, innerWidthMm: number): BoxPorts {
  const { count, widthMm, heightMm, lengthMm } = port;
  if (widthMm === null || heightMm === null) return [];
  const isWhole = count === 1 && Math.abs(widthMm - innerWidthMm) <= WHOLE_WIDTH_MM;
  return Array.from({ length: count }, (_, index) => ({
    kind: 'slot',
    face: input.baffle.face,
    along: alongOf(input),
    heightMm,
    widthMm: isWhole ? null : widthMm,
    acrossMm: count === 1 ? null : ((index - (count - 1) / 2) * innerWidthMm) / count,
    lengthMm,
    bendsAllowed: 2,
  }));
}

/** Wall of a pipe where nothing is known of it: common for plastic ones of this size. */
const PIPE_WALL_MM = 4;

function pipes(port: SoundPortResult, input: BoxInput): BoxPorts {
  const { count, diameterMm, lengthMm, outerFlareMm, innerFlareMm } = port;
  if (diameterMm === null) return [];
  return [
    {
      kind: 'tube',
      face: input.baffle.face,
      count,
      insideDiaMm: diameterMm,
      wallMm: PIPE_WALL_MM,
      lengthMm,
      outerFlareMm,
      innerFlareMm,
      massKg: 0,
      at: null,
    },
  ];
}

/** Of a vented box. The chambers of a bandpass box are not on this sheet, so neither are its ports. */
export function portsOf(input: BoxInput, sound: SoundResult | null, innerWidthMm: number): BoxPorts {
  if (sound?.enclosure !== 'vented') return [];
  return sound.ports
    .filter(({ buildable }) => buildable)
    .flatMap((port) => (port.shape === 'slot' ? slots(port, input, innerWidthMm) : pipes(port, input)));
}
