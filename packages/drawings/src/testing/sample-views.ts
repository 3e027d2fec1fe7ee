// Drawings of an invented hatchback and its box, for tests and for looking at.
import type { Panel } from '@gusset/contracts/panel';
import type { BoxFrontInput } from '../views/box-front.ts';
import type { BoxIsometricInput, Point3Mm } from '../views/box-isometric.ts';
import type { BoxViewInput } from '../views/box-view.ts';
import type { CavityViewInput } from '../views/cavity-view.ts';
import type { SheetMapInput } from '../views/sheet-map.ts';

const at = (xMm: number, yMm: number): { xMm: number; yMm: number } => ({ xMm, yMm });

export const CAVITY: CavityViewInput = {
  title: 'Halden Brisk hatch, side section, seats up',
  description:
    'Cargo space 812 mm deep on the floor, 498 mm high at the seat back, with the box standing at the seat back.',
  edges: [
    { from: at(0, 0), to: at(812, 0), name: 'Floor', kind: 'rigid' },
    { from: at(812, 0), to: at(830, 60), name: 'Sill', kind: 'rigid' },
    { from: at(830, 60), to: at(560, 610), name: 'Opening', kind: 'open' },
    { from: at(560, 610), to: at(250, 640), name: 'Parcel shelf', kind: 'rigid' },
    { from: at(250, 640), to: at(150, 560), name: 'Seat top', kind: 'soft' },
    { from: at(150, 560), to: at(0, 0), name: 'Seat back', kind: 'soft' },
  ],
  obstructions: [{ name: 'jack well', outline: [at(690, 0), at(800, 0), at(800, 70), at(690, 70)] }],
  opening: { from: at(830, 60), to: at(560, 610), text: 'opening 597' },
  labels: [],
  box: {
    outer: [at(0, 0), at(584, 0), at(440, 402), at(107, 440)],
    inner: [at(24, 18), at(559, 18), at(427, 386), at(120, 420)],
    pose: { xMm: 14, yMm: 4, thetaRad: 0, zMm: 0 },
  },
  wayOut: {
    poses: [
      { xMm: 150, yMm: 60, thetaRad: 0.16, zMm: 0 },
      { xMm: 420, yMm: 170, thetaRad: 0.3, zMm: 0 },
    ],
    track: [at(330, 220), at(470, 260), at(600, 330), at(760, 420)],
  },
  clearances: [
    { from: at(121, 444), to: at(114, 446), text: ['tightest 6.2', 'seat back'], verdict: 'fails' },
    { from: at(598, 20), to: at(690, 20), text: ['92 to the', 'jack well'], verdict: 'ok' },
  ],
};

export const SURVEY: CavityViewInput = {
  ...CAVITY,
  title: 'Cargo section, seats up',
  box: null,
  wayOut: null,
  clearances: [],
  opening: null,
  labels: [
    { letter: 'A', from: at(0, 0), to: at(812, 0), active: false, value: '812' },
    { letter: 'B', from: at(0, 0), to: at(0, 560), active: false, value: '19 5/8″' },
    { letter: 'C', from: at(830, 60), to: at(560, 610), active: true, value: null },
    { letter: 'D', from: at(250, 640), to: at(560, 610), active: false, value: null },
    { letter: 'E', from: at(400, 0), to: at(400, 625), active: false, value: '625' },
  ],
};

export const BOX_SECTION: BoxViewInput = {
  title: 'Box 1, side section',
  description: 'Wedge box, 18 mm panels, 584 mm on the floor, 402 mm high.',
  parts: [
    { mark: 'A', outline: [at(0, 0), at(584, 0), at(578, 18), at(6, 18)], standing: 'cut' },
    { mark: 'B', outline: [at(6, 18), at(24, 18), at(137, 384), at(119, 384)], standing: 'cut' },
    { mark: 'C', outline: [at(119, 384), at(452, 384), at(446, 402), at(124, 402)], standing: 'cut' },
    { mark: 'D', outline: [at(578, 18), at(559, 18), at(433, 384), at(452, 384)], standing: 'cut' },
    {
      mark: null,
      outline: [at(519, 108), at(500, 100), at(390, 150), at(350, 250), at(440, 310), at(465, 318)],
      standing: 'hidden',
    },
    { mark: null, outline: [at(24, 60), at(330, 60), at(330, 130), at(46, 130)], standing: 'seen' },
  ],
  centreLines: [{ from: at(350, 160), to: at(540, 228) }],
  dimensions: [
    { from: at(0, 0), to: at(584, 0), text: null, offsetPt: -30, key: 'depthMm', failing: false },
    { from: at(584, 0), to: at(584, 402), text: '402', offsetPt: -34, key: 'heightMm', failing: false },
    { from: at(446, 402), to: at(124, 402), text: '322', offsetPt: -26, key: 'topMm', failing: true },
    { from: at(0, 0), to: at(18, 0), text: null, offsetPt: -58, key: null, failing: false },
  ],
  notes: [{ at: at(230, 240), text: 'net 74.2 L' }],
};

export const BOX_FRONT: BoxFrontInput = {
  title: 'Box 1, baffle from the front',
  description: 'Baffle 900 by 402 mm with one driver and one slot port.',
  outline: [at(0, 0), at(900, 0), at(900, 402), at(0, 402)],
  cutouts: [
    {
      shape: 'circle',
      name: 'Quince 12',
      centre: at(290, 201),
      diameterMm: 283,
      flangeDiameterMm: 318,
      bolts: { diameterMm: 302, count: 8, holeDiameterMm: 5.5, startRad: Math.PI / 8 },
    },
    {
      shape: 'rectangle',
      name: 'port',
      centre: at(760, 201),
      widthMm: 60,
      heightMm: 320,
      cornerRadiusMm: 20,
    },
  ],
  dimensions: [
    { from: at(0, 0), to: at(900, 0), text: null, offsetPt: -30, key: 'widthMm', failing: false },
    { from: at(0, 0), to: at(0, 402), text: null, offsetPt: 30, key: 'heightMm', failing: false },
  ],
};

const corner = (xMm: number, yMm: number, zMm: number): Point3Mm => ({ xMm, yMm, zMm });
const ringOnFront = (centreZ: number, radius: number): Point3Mm[] =>
  Array.from({ length: 48 }, (_, index) => {
    const angle = (index * Math.PI) / 24;
    const y = 200 + radius * Math.sin(angle);
    return corner(584 - (y / 402) * 138, y, centreZ + radius * Math.cos(angle));
  });

export const BOX_ISOMETRIC: BoxIsometricInput = {
  title: 'Box 1, isometric',
  description: 'Wedge box seen from the opening, driver in the sloped baffle.',
  from: 'right',
  notes: [],
  faces: [
    {
      name: 'bottom',
      mark: null,
      hatched: false,
      openings: [],
      corners: [corner(0, 0, -450), corner(584, 0, -450), corner(584, 0, 450), corner(0, 0, 450)],
    },
    {
      name: 'top',
      mark: 'C',
      hatched: false,
      openings: [],
      corners: [corner(124, 402, 450), corner(446, 402, 450), corner(446, 402, -450), corner(124, 402, -450)],
    },
    {
      name: 'baffle',
      mark: 'D',
      hatched: false,
      openings: [ringOnFront(-160, 140)],
      corners: [corner(584, 0, 450), corner(584, 0, -450), corner(446, 402, -450), corner(446, 402, 450)],
    },
    {
      name: 'back',
      mark: null,
      hatched: false,
      openings: [],
      corners: [corner(0, 0, -450), corner(0, 0, 450), corner(124, 402, 450), corner(124, 402, -450)],
    },
    {
      name: 'right end',
      mark: 'E',
      hatched: true,
      openings: [],
      corners: [corner(0, 0, 450), corner(584, 0, 450), corner(446, 402, 450), corner(124, 402, 450)],
    },
    {
      name: 'left end',
      mark: 'F',
      hatched: false,
      openings: [],
      corners: [corner(584, 0, -450), corner(0, 0, -450), corner(124, 402, -450), corner(446, 402, -450)],
    },
  ],
};

export const PANEL: Panel = {
  id: 'baffle',
  mark: 'D',
  name: 'Baffle',
  materialId: 'ply-18',
  thicknessMm: 18,
  lengthMm: 900,
  widthMm: 425,
  outline: [at(0, 0), at(900, 0), at(900, 425), at(0, 425)],
  edges: [
    { bevelRad: 0.33, joint: 'mitre', runsThrough: false },
    { bevelRad: 0, joint: 'rabbet', runsThrough: true },
    { bevelRad: 0.33, joint: 'butt', runsThrough: false },
    { bevelRad: 0, joint: 'rabbet', runsThrough: true },
  ],
  holes: [
    { shape: 'circle', purpose: 'driver', centreXMm: 290, centreYMm: 212, diameterMm: 283, depthMm: null },
    {
      shape: 'rectangle',
      purpose: 'port',
      centreXMm: 760,
      centreYMm: 212,
      widthMm: 60,
      heightMm: 320,
      cornerRadiusMm: 20,
      depthMm: null,
    },
  ],
  grain: 'length',
  quantity: 1,
  solidMm3: 5_300_000,
  massKg: 3.7,
};

export const SHEET: SheetMapInput = {
  title: 'Sheet 1 of 2, birch ply 18',
  description: 'Sheet 2440 by 1220 mm with five panels, one offcut of 1036 by 540 mm.',
  widthMm: 2440,
  heightMm: 1220,
  trimMm: 10,
  grain: 'x',
  placements: [
    { key: 'a', mark: 'A', xMm: 10, yMm: 10, widthMm: 900, heightMm: 584, turned: false },
    { key: 'd', mark: 'D', xMm: 10, yMm: 598, widthMm: 900, heightMm: 425, turned: false },
    { key: 'c', mark: 'C', xMm: 914, yMm: 10, widthMm: 900, heightMm: 322, turned: false },
    { key: 'e', mark: 'E', xMm: 914, yMm: 336, widthMm: 584, heightMm: 402, turned: true },
    { key: 'f', mark: 'F', xMm: 1502, yMm: 336, widthMm: 312, heightMm: 402, turned: true },
    { key: 'g', mark: 'G1', xMm: 10, yMm: 1027, widthMm: 900, heightMm: 60, turned: false },
  ],
  offcuts: [
    { xMm: 1818, yMm: 10, widthMm: 612, heightMm: 728 },
    { xMm: 914, yMm: 742, widthMm: 1516, heightMm: 468 },
  ],
  cuts: [
    { fromXMm: 912, fromYMm: 0, toXMm: 912, toYMm: 1220 },
    { fromXMm: 912, fromYMm: 740, toXMm: 2440, toYMm: 740 },
    { fromXMm: 1816, fromYMm: 0, toXMm: 1816, toYMm: 740 },
  ],
};
