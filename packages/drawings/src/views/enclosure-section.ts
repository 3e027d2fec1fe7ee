// A box in section as an idea, not to size: which chambers there are, where the drivers stand, where the air goes out.
// Panels are hatched (ISO 128-50), neighbours against each other; chambers share the room as their air does.
import { hatch, line, polygon, polyline, region, text } from '../scene/items.ts';
import type { Layer, Scene, SceneItem } from '../scene/scene.ts';
import { rectangle, type Spot, spot } from '../scene/spot.ts';

export type DrawnVent = {
  readonly shape: 'round' | 'slot';
  readonly isFlared: boolean;
  /** `38 Hz`; empty = not known yet. */
  readonly note: string;
};

export type EnclosureSectionInput = {
  readonly title: string;
  readonly description: string;
  /** Behind the drivers; null = the car's own trunk. */
  readonly rear: { readonly note: string; readonly vent: DrawnVent | null } | null;
  /** In front of them; null = they look straight out. */
  readonly front: { readonly note: string; readonly vent: DrawnVent | null } | null;
  /** Share of the room that the rear chamber takes, 0 to 1. */
  readonly rearShare: number;
  readonly radiatorNote: string | null;
  readonly isIsobaric: boolean;
};

export type EnclosureSectionView = {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly textPt: number;
};

const VIEW: EnclosureSectionView = { widthPt: 300, heightPt: 170, textPt: 11 };
const PANEL_PT = 9;
const LEAST_SHARE = 0.3; // so that a small chamber still holds its note

type Room = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };

export function enclosureSection(
  input: EnclosureSectionInput,
  partial: Partial<EnclosureSectionView> = {},
): Scene {
  const view = { ...VIEW, ...partial };
  const outside: Room = {
    left: view.textPt,
    top: view.textPt * 0.8,
    right: view.widthPt - view.textPt * 2.2,
    bottom:
      view.heightPt - view.textPt * (input.front !== null && (input.rear?.vent ?? null) !== null ? 2 : 0.8),
  };
  const layers: Layer[] =
    input.rear === null ? wallLayers(input, outside, view) : boxLayers(input, input.rear, outside, view);
  return {
    title: input.title,
    description: input.description,
    widthPt: view.widthPt,
    heightPt: view.heightPt,
    world: null,
    scaleLabel: null,
    layers: layers.filter(({ items }) => items.length > 0),
  };
}

/** Drivers in a wall: the trunk behind it has no panels of its own. */
function wallLayers(input: EnclosureSectionInput, outside: Room, view: EnclosureSectionView): Layer[] {
  const x = (outside.left + outside.right) / 2;
  const middle = (outside.top + outside.bottom) / 2;
  const reach = driverReach(outside);
  const pieces = wallPieces(x, outside, middle, reach);
  const note = view.textPt;
  return [
    { id: 'panels', items: pieces.flatMap((ring) => panelItems(ring)) },
    { id: 'driver', items: driverItems(spot(x, middle), reach, input.isIsobaric) },
    {
      id: 'notes',
      items: [
        text(spot(outside.left, outside.top + note), 'trunk', { sizePt: note, ink: 'ink-2' }),
        text(spot(outside.right, outside.top + note), 'cabin', {
          sizePt: note,
          ink: 'ink-2',
          anchor: 'end',
        }),
      ],
    },
  ];
}

function boxLayers(
  input: EnclosureSectionInput,
  rear: NonNullable<EnclosureSectionInput['rear']>,
  outside: Room,
  view: EnclosureSectionView,
): Layer[] {
  const { front } = input;
  const inside = inset(outside, PANEL_PT);
  const middle = (inside.top + inside.bottom) / 2;
  const share = Math.min(Math.max(input.rearShare, LEAST_SHARE), 1 - LEAST_SHARE);
  const baffleX =
    front === null ? outside.right - PANEL_PT / 2 : inside.left + (inside.right - inside.left) * share;
  const reach = driverReach(inside) * (input.radiatorNote === null ? 1 : 0.72);
  // Both stand in one wall where a port or radiator shares it with the drivers.
  const sharesWall = input.radiatorNote !== null || (front === null && rear.vent !== null);
  const driverAt = spot(baffleX, sharesWall ? inside.top + reach * 1.3 : middle);
  const radiatorAt = spot(outside.right - PANEL_PT / 2, inside.bottom - reach * 1.35);
  const rearRoom: Room = { ...inside, right: front === null ? inside.right : baffleX - PANEL_PT / 2 };
  const frontRoom: Room = { ...inside, left: baffleX + PANEL_PT / 2 };
  const rearVent =
    rear.vent === null ? [] : ventItems(rear.vent, ventOf(outside, rearRoom, front !== null), view);
  const frontVent =
    front?.vent === undefined || front.vent === null
      ? []
      : ventItems(front.vent, ventOf(outside, frontRoom, false), view);
  return [
    {
      id: 'panels',
      items: [
        shell(outside, inside),
        hatch([corners(outside), corners(inside)], 'panel'),
        ...(front === null
          ? []
          : wallPieces(baffleX, inside, driverAt.y, reach).flatMap((ring) => panelItems(ring))),
      ],
    },
    {
      id: 'openings',
      items: [
        ...(front === null ? [mouthItem(driverAt, reach)] : []),
        ...(input.radiatorNote === null ? [] : [mouthItem(radiatorAt, reach)]),
        ...rearVent,
        ...frontVent,
      ],
    },
    {
      id: 'driver',
      items: [
        ...driverItems(driverAt, reach, input.isIsobaric),
        ...(input.radiatorNote === null ? [] : radiatorItems(radiatorAt, reach)),
      ],
    },
    {
      id: 'notes',
      items: [
        note(spot(rearRoom.left + 6, rearRoom.top + view.textPt * 1.2), rear.note, view),
        ...(front === null
          ? []
          : [note(spot(frontRoom.left + 12, frontRoom.top + view.textPt * 1.2), front.note, view)]),
        ...(input.radiatorNote === null
          ? []
          : [
              note(
                spot(radiatorAt.x - reach * 0.6, radiatorAt.y + view.textPt * 0.35),
                input.radiatorNote,
                view,
                'mark',
              ),
            ]),
      ],
    },
  ];
}

const note = (at: Spot, words: string, { textPt }: EnclosureSectionView, ink: 'ink' | 'mark' = 'ink') =>
  text(at, words, {
    sizePt: textPt,
    face: 'mono',
    ink,
    anchor: ink === 'ink' ? 'start' : 'end',
    backed: ink === 'ink',
  });

const corners = ({ left, top, right, bottom }: Room): readonly Spot[] =>
  rectangle(left, top, right - left, bottom - top);

const inset = (room: Room, by: number): Room => ({
  left: room.left + by,
  top: room.top + by,
  right: room.right - by,
  bottom: room.bottom - by,
});

const shell = (outside: Room, inside: Room): SceneItem =>
  region([corners(outside), corners(inside)], 'outline', 'sheet');

const driverReach = ({ top, bottom }: Room): number => (bottom - top) * 0.27;

/** An upright panel at `x` with a hole for a driver at `y`. */
function wallPieces(
  x: number,
  { top, bottom }: Room,
  y: number,
  reach: number,
): readonly (readonly Spot[])[] {
  const left = x - PANEL_PT / 2;
  return [
    rectangle(left, top, PANEL_PT, y - reach - top),
    rectangle(left, y + reach, PANEL_PT, bottom - y - reach),
  ];
}

const panelItems = (ring: readonly Spot[]): readonly SceneItem[] => [
  polygon(ring, 'outline', 'sheet'),
  hatch([ring], 'counter-panel'),
];

/** The hole that a cone stands in, through the right wall. */
const mouthItem = ({ x, y }: Spot, reach: number): SceneItem =>
  polygon(rectangle(x - PANEL_PT / 2 - 1.6, y - reach, PANEL_PT + 3.2, reach * 2), null, 'sheet');

/** Flange, cone and magnet; an isobaric pair has a second one on its back. */
function driverItems(at: Spot, reach: number, isIsobaric: boolean): readonly SceneItem[] {
  const one = oneDriver(at, reach);
  return isIsobaric ? [...oneDriver(spot(at.x - reach * 0.95, at.y), reach), ...one] : one;
}

function oneDriver({ x, y }: Spot, reach: number): readonly SceneItem[] {
  const face = x + PANEL_PT / 2;
  const neck = face - reach * 0.62;
  const magnet = rectangle(neck - reach * 0.42, y - reach * 0.46, reach * 0.42, reach * 0.92);
  const cone = [
    spot(face, y - reach),
    spot(neck, y - reach * 0.24),
    spot(neck, y + reach * 0.24),
    spot(face, y + reach),
  ];
  return [
    polygon(magnet, 'outline', 'sheet'),
    hatch([magnet], 'body'),
    polyline(cone, 'outline'),
    polyline([spot(face, y - reach * 1.16), spot(face, y - reach)], {
      role: 'outline',
      dashPt: null,
      widthPt: 2.4,
    }),
    polyline([spot(face, y + reach), spot(face, y + reach * 1.16)], {
      role: 'outline',
      dashPt: null,
      widthPt: 2.4,
    }),
    line(spot(neck - reach * 0.6, y), spot(face + reach * 0.3, y), 'centre'),
  ];
}

/** A cone without a motor. */
function radiatorItems({ x, y }: Spot, reach: number): readonly SceneItem[] {
  const face = x + PANEL_PT / 2;
  const cone = [
    spot(face, y - reach),
    spot(face - reach * 0.3, y - reach * 0.5),
    spot(face - reach * 0.3, y + reach * 0.5),
    spot(face, y + reach),
  ];
  return [
    polyline(cone, 'outline'),
    polyline([spot(face, y - reach * 1.16), spot(face, y - reach)], {
      role: 'outline',
      dashPt: null,
      widthPt: 2.4,
    }),
    polyline([spot(face, y + reach), spot(face, y + reach * 1.16)], {
      role: 'outline',
      dashPt: null,
      widthPt: 2.4,
    }),
  ];
}

type VentPlace = {
  /** Outer end of the pipe, on the outside of a wall. */
  readonly at: Spot;
  readonly lengthPt: number;
  readonly borePt: number;
  /** Runs up from the bottom (a rear chamber behind another one) or in from the right. */
  readonly isUpright: boolean;
};

function ventOf(outside: Room, room: Room, isBehind: boolean): VentPlace {
  const borePt = (room.bottom - room.top) * 0.15;
  if (isBehind) {
    const x = room.left + (room.right - room.left) * 0.24;
    return {
      at: spot(x, outside.bottom),
      lengthPt: (outside.bottom - outside.top) * 0.42,
      borePt,
      isUpright: true,
    };
  }
  const y = room.bottom - borePt * 0.95;
  const lengthPt =
    Math.min((room.right - room.left) * 0.72, (outside.right - outside.left) * 0.42) + PANEL_PT;
  return { at: spot(outside.right, y), lengthPt, borePt, isUpright: false };
}

/** Pipe walls, cleared through the panel, flared where it is; an arrow says where the air goes. */
function ventItems(vent: DrawnVent, place: VentPlace, view: EnclosureSectionView): readonly SceneItem[] {
  const half = place.borePt / 2;
  const flare = vent.isFlared && vent.shape === 'round' ? half * 0.7 : 0;
  // Along the pipe (from its outer end inward) and across it, as the pipe lies.
  const lie = (along: number, across: number): Spot =>
    place.isUpright
      ? spot(place.at.x + across, place.at.y - along)
      : spot(place.at.x - along, place.at.y + across);
  const clear = polygon(
    [lie(-1.2, -half), lie(PANEL_PT + 1.2, -half), lie(PANEL_PT + 1.2, half), lie(-1.2, half)],
    null,
    'sheet',
  );
  const side = (sign: 1 | -1): SceneItem =>
    polyline(
      [
        lie(0, sign * (half + flare)),
        lie(flare, sign * half),
        lie(place.lengthPt - flare, sign * half),
        lie(place.lengthPt, sign * (half + flare)),
      ],
      { role: 'outline', dashPt: null, widthPt: vent.shape === 'slot' ? 2.6 : 1.5 },
    );
  const tip = lie(-place.borePt * 0.9, 0);
  const barb = place.borePt * 0.28;
  const arrow = [
    polyline([lie(place.lengthPt * 0.5, 0), tip], 'construction'),
    polyline(
      [lie(-place.borePt * 0.9 + barb, -barb * 0.7), tip, lie(-place.borePt * 0.9 + barb, barb * 0.7)],
      'construction',
    ),
  ];
  const beside = place.isUpright
    ? lie(place.lengthPt * 0.62, half + 5)
    : lie(place.lengthPt, -half - flare - view.textPt * 0.5);
  return [
    clear,
    side(1),
    side(-1),
    ...arrow,
    text(beside, vent.note, { sizePt: view.textPt, face: 'mono', ink: 'mark' }),
  ];
}
