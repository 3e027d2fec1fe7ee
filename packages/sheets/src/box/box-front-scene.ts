// The baffle as someone sees it who stands in front of it, and the whole box from a corner.
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { Vector } from '@gusset/contracts/enclosure';
import {
  boxFront,
  boxIsometric,
  type DrawingView,
  type DrawnCutout,
  type DrawnFace,
  type Point3Mm,
  SCREEN_VIEW,
  type Scene,
} from '@gusset/drawings';
import { at, type FlatBaffle, flatBaffle, panelPoint } from './box-outline.ts';

const OFFSET_PT = 26;
/** Corners of a circle in an oblique view. */
const CIRCLE_CORNERS = 48;

export function boxFrontScene(result: BoxSheetResult, partial: Partial<DrawingView> = {}): Scene | null {
  const view = { ...SCREEN_VIEW, ...partial };
  const baffle = flatBaffle(result);
  if (baffle === null) return null;
  const xs = baffle.outline.map(({ xMm }) => xMm);
  const ys = baffle.outline.map(({ yMm }) => yMm);
  const [right, top] = [Math.max(...xs), Math.max(...ys)];
  const { drivers } = result.design;
  const cutouts: DrawnCutout[] = result.box.drivers.map(
    (driver): DrawnCutout => ({
      shape: 'circle',
      name: result.box.drivers.length === 1 ? 'driver' : `driver ${driver.number}`,
      centre: baffle.flat(driver.seatMm),
      diameterMm: driver.cutoutDiaMm,
      flangeDiameterMm: drivers?.body.overallDiaMm ?? null,
      bolts:
        drivers === null || drivers.fixing === null || drivers.body.boltCount === 0
          ? null
          : {
              diameterMm: drivers.body.boltCircleDiaMm,
              count: drivers.body.boltCount,
              holeDiameterMm: drivers.fixing.holeDiaMm,
              startRad: Math.PI / 2,
            },
    }),
  );
  const { formatLength } = view;
  const upright = Math.abs(top - result.box.sizes.carcass.heightMm) < 0.05;
  return boxFront(
    {
      title: `Baffle, seen from the ${result.design.baffle.face}`,
      description: `${cutouts.length} cut-outs in a face ${formatLength(right)} by ${formatLength(top)}.`,
      outline: baffle.outline,
      cutouts: [...cutouts, ...terminalAndPipes(result, baffle), ...slotMouths(result, baffle)],
      dimensions: [
        {
          from: at(right, 0),
          to: at(0, 0),
          text: null,
          offsetPt: OFFSET_PT,
          key: 'outside.width',
          failing: false,
        },
        {
          from: at(right, top),
          to: at(right, 0),
          text: null,
          offsetPt: OFFSET_PT,
          key: upright ? 'outside.height' : null,
          failing: false,
        },
      ],
    },
    view,
  );
}

function terminalAndPipes(result: BoxSheetResult, baffle: FlatBaffle): readonly DrawnCutout[] {
  const panel = result.box.panels.find(({ id }) => id === baffle.body.panelId);
  return (panel?.holes ?? []).flatMap((hole): DrawnCutout[] => {
    const isTerminal = hole.purpose === 'terminal cup';
    if (!isTerminal && !hole.purpose.startsWith('port ')) return [];
    const centre = baffle.flat(panelPoint(baffle.body, at(hole.centreXMm, hole.centreYMm)));
    const common = { name: isTerminal ? 'terminal' : 'port', centre };
    return hole.shape === 'circle'
      ? [{ ...common, shape: 'circle', diameterMm: hole.diameterMm, flangeDiameterMm: null, bolts: null }]
      : [
          {
            ...common,
            shape: 'rectangle',
            widthMm: hole.widthMm,
            heightMm: hole.heightMm,
            cornerRadiusMm: hole.cornerRadiusMm,
          },
        ];
  });
}

/** Where the channel of a slot comes out through the baffle: no hole, the panel is notched or stops short. */
function slotMouths(
  { box, design }: BoxSheetResult,
  { flat }: FlatBaffle,
): readonly Extract<DrawnCutout, { shape: 'rectangle' }>[] {
  return (box.ports ?? []).flatMap(({ face, section, centreLineMm, openAreaCm2 }) => {
    const [upper, lower, middle] = [section?.[0], section?.at(-1), centreLineMm[0]];
    if (face !== design.baffle.face || upper === undefined || lower === undefined || middle === undefined)
      return [];
    const heightMm = Math.hypot(upper.xMm - lower.xMm, upper.yMm - lower.yMm);
    const widthMm = (openAreaCm2 * 100) / heightMm;
    return [{ shape: 'rectangle', name: 'port', centre: flat(middle), widthMm, heightMm, cornerRadiusMm: 0 }];
  });
}

export function boxIsometricScene(result: BoxSheetResult, view: Partial<DrawingView> = {}): Scene {
  const { box, design } = result;
  const markOf = (face: string) =>
    box.bodies.find((body) => body.face === face && body.role !== 'doubler')?.mark ?? null;
  const faces = box.faces.map(
    ({ face, cornersMm }): DrawnFace => ({
      name: face,
      corners: cornersMm.map(toPoint3),
      openings: face === design.baffle.face ? box.drivers.map((driver) => ring(result, driver)) : [],
      mark: markOf(face),
      hatched: false,
    }),
  );
  return boxIsometric(
    {
      title: 'The box from a corner',
      description: 'Its outer faces with the letters of their panels.',
      faces,
      from: 'right',
      notes: [],
    },
    view,
  );
}

const toPoint3 = ({ x, y, z }: Vector): Point3Mm => ({ xMm: x, yMm: y, zMm: z });

/** The cut-out as a polygon in the plane of the baffle. */
function ring(
  { box }: BoxSheetResult,
  driver: BoxSheetResult['box']['drivers'][number],
): readonly Point3Mm[] {
  const body = box.bodies.find(({ role }) => role === 'baffle');
  if (body === undefined) return [];
  const { xAxis, yAxis } = body.placement;
  const { seatMm, cutoutDiaMm } = driver;
  return Array.from({ length: CIRCLE_CORNERS }, (_, index) => {
    const turn = (index * 2 * Math.PI) / CIRCLE_CORNERS;
    const [u, v] = [(Math.cos(turn) * cutoutDiaMm) / 2, (Math.sin(turn) * cutoutDiaMm) / 2];
    return {
      xMm: seatMm.x + u * xAxis.x + v * yAxis.x,
      yMm: seatMm.y + u * xAxis.y + v * yAxis.y,
      zMm: seatMm.z + u * xAxis.z + v * yAxis.z,
    };
  });
}
