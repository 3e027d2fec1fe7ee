// All ports of a box: slots first, because drivers and braces make room for them; pipes last, where room is left.
import type { BoxDesign } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { BRACE_TO_DRIVER_MM } from './brace-places.ts';
import type { BraceLayout } from './bracing.ts';
import type { Carcass } from './carcass.ts';
import type { DriverLayout } from './driver-layout.ts';
import { type Mouths, quarrel } from './mouths.ts';
import type { LaidPort, Stretch, Tube } from './port-types.ts';
import { layOutSideSlot } from './side-slot.ts';
import { ringWithout } from './slot-channel.ts';
import { layOutSlot } from './slot-port.ts';
import { faceWoodMm, layOutTubes, tubeHoleDiaMm, tubeRadiusMm } from './tube-port.ts';

export type SlotLayout = {
  readonly slots: readonly LaidPort[];
  readonly mouths: Mouths;
  /** The inside in the side view less every channel that goes from side to side: the outline of a brace. */
  readonly frame: readonly PointMm[];
};

function layOutOneSlot(design: BoxDesign, carcass: Carcass, index: number): LaidPort | Refusal | null {
  const port = design.ports[index];
  if (port === undefined || port.kind !== 'slot') return null;
  const field = `ports[${index}]`;
  const faces = carcass.walls.map((wall) => wall.face);
  const faceIndex = faces.indexOf(port.face);
  if (faceIndex < 0) {
    const why = `this box has no ${port.face} wall`;
    return refuse(`${field}.face`, { allowed: faces.join(', '), got: port.face, why });
  }
  if (port.along === 'left' || port.along === 'right') {
    const { sides, kinds } = design.joints;
    const sidesPlain = sides === 'through' && kinds.sides === 'butt';
    return layOutSideSlot(port, index + 1, { carcass, side: port.along, sidesPlain });
  }
  const alongIndex = faces.indexOf(port.along);
  const count = faces.length;
  const beside = [(faceIndex + 1) % count, (faceIndex + count - 1) % count];
  if (!beside.includes(alongIndex)) {
    const allowed = [...beside.map((at) => faces[at]), 'left', 'right'].join(', ');
    const why = `a slot in the ${port.face} runs along a wall beside it`;
    return refuse(`${field}.along`, { allowed, got: port.along, why });
  }
  return layOutSlot(port, index + 1, { carcass, alongIndex });
}

/** Slots of the design, or the refusal of the first that cannot be. */
export function layOutSlots(design: BoxDesign, carcass: Carcass): SlotLayout | Refusal {
  const slots: LaidPort[] = [];
  for (let index = 0; index < design.ports.length; index++) {
    const slot = layOutOneSlot(design, carcass, index);
    if (isRefusal(slot)) return slot;
    if (slot !== null) slots.push(slot);
  }
  const channels = slots.flatMap(({ channel, stretch }) =>
    channel === null || stretch !== null ? [] : [channel],
  );
  const frame = ringWithout(carcass.free, channels);
  if (frame === null) {
    const last = slots.at(-1)?.placed.number ?? 1;
    return refuse(`ports[${last - 1}].along`, {
      allowed: 'a wall that no other slot runs along',
      got: last,
      why: 'two slots from side to side want the same corner of the box',
    });
  }
  const quarrelling = quarrel(carcass, slots);
  if (quarrelling !== null) {
    return refuse(`ports[${quarrelling - 1}].face`, {
      allowed: 'a face whose corner no other slot opens at the other way round',
      got: design.ports[quarrelling - 1]?.face ?? null,
      why: 'two mouths want the same corner of the box',
    });
  }
  const mouths = {
    across: slots.flatMap(({ mouth }) => (mouth === null ? [] : [mouth])),
    beside: slots.flatMap(({ sideMouth }) => (sideMouth === null ? [] : [sideMouth])),
  };
  return { slots, mouths, frame };
}

/** Stretches across the box where no brace may stand: narrow slots, and pipes that somebody placed. */
export function braceKeepOuts(design: BoxDesign, carcass: Carcass, { slots }: SlotLayout): Stretch[] {
  const half = carcass.innerWidthMm / 2;
  const ofTubes = design.ports.flatMap((port): Stretch[] => {
    if (port.kind !== 'tube' || port.at === null) return [];
    const woodMm = faceWoodMm(carcass, port.face);
    const radiusMm = Math.max(tubeRadiusMm(port, woodMm), tubeHoleDiaMm(port) / 2) + BRACE_TO_DRIVER_MM;
    if (port.face === 'left') return [{ fromMm: half + woodMm - port.lengthMm, toMm: half }];
    if (port.face === 'right') return [{ fromMm: -half, toMm: port.lengthMm - woodMm - half }];
    return port.at.map(({ acrossMm }) => ({ fromMm: acrossMm - radiusMm, toMm: acrossMm + radiusMm }));
  });
  return [...slots.flatMap(({ stretch }) => (stretch === null ? [] : [stretch])), ...ofTubes];
}

/** Every port in the order of the design. */
export function layOutPorts(
  design: BoxDesign,
  carcass: Carcass,
  { slots }: SlotLayout,
  around: { readonly drivers: DriverLayout | null; readonly braces: BraceLayout },
): readonly LaidPort[] | Refusal {
  const ports: LaidPort[] = [...slots];
  const tubes: Tube[] = [];
  for (const [index, port] of design.ports.entries()) {
    if (port.kind !== 'tube') continue;
    const laid = layOutTubes(port, index + 1, carcass, { ...around, tubes });
    if (isRefusal(laid)) return laid;
    ports.push(laid);
    tubes.push(...laid.tubes);
  }
  return ports.sort((a, b) => a.placed.number - b.placed.number);
}
