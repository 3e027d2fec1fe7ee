// Behind and under the pickup's rear seat, and between seat and bulkhead of the van.
import type { FreeSection } from '@gusset/contracts/survey';
import { length } from '../typed.ts';
import type { DemoSurvey } from './demo-survey.ts';

const corner = (x: string, y: string) => ({ x: length(x, 'in'), y: length(y, 'in') });

/** The cable duct along the foot of the bulkhead makes a step that no ready form has. */
const VAN_SECTION: FreeSection = {
  by: 'points',
  corners: [
    { id: 'duct-top', wallName: 'Cable duct, top', role: 'other', surface: 'hard' },
    { id: 'duct-edge', wallName: 'Cable duct, front', role: 'other', surface: 'hard' },
    { id: 'duct-foot', wallName: 'Floor', role: 'floor', surface: 'soft' },
    { id: 'floor-end', wallName: 'Seat back', role: 'seat-back', surface: 'soft' },
    { id: 'seat-top', wallName: 'Opening', role: 'opening', surface: 'open' },
    { id: 'wall-top', wallName: 'Bulkhead', role: 'cab-wall', surface: 'hard' },
  ],
};

export const CAB_SURVEYS: readonly DemoSurvey[] = [
  {
    name: 'drover behind the seat',
    model: 'drover',
    formKind: 'behind-seat',
    spaceName: 'Behind the rear seat',
    seatState: 'Seat back latched',
    unit: 'in',
    takenBy: 'tomas',
    daysAgo: 18,
    readings: {
      floorDepth: '11 3/4"',
      depthAt300: '10 1/8"',
      depthAt600: '8 1/4"',
      height: '28 1/2"',
      gapAtTop: '7 1/8"',
      cabWallLean: { typed: '2', method: 'straightedge-offsets' },
      width: '52 1/4"',
      openingWidth: '47"',
    },
    extras: {
      keepFree: [
        {
          id: 'tether-right',
          name: 'Child-seat tether, right',
          kind: 'child-seat-tether',
          corners: [corner('0', '22'), corner('3', '22'), corner('3', '27'), corner('0', '27')],
          left: length('14"', 'in'),
          right: length('18"', 'in'),
          plusMinusMm: 5,
        },
      ],
      obstructions: [
        {
          id: 'latch',
          name: 'Seat latch',
          appliesTo: 'both',
          moves: true,
          corners: [corner('0', '24'), corner('2 1/2', '24'), corner('2 1/2', '27'), corner('0', '27')],
          left: length('-2"', 'in'),
          right: length('2"', 'in'),
          plusMinusMm: 4,
        },
      ],
    },
    notes: 'Jack and wheel brace moved to the bed box with the customer’s agreement.',
    settled: true,
  },
  {
    name: 'drover under the seat',
    model: 'drover',
    formKind: 'under-seat',
    spaceName: 'Under the rear seat',
    seatState: 'Cushion down, somebody on it',
    unit: 'mm',
    takenBy: 'tomas',
    daysAgo: 2,
    readings: {
      floorDepth: '462',
      backHeight: '254',
      middleHeight: '238',
      frontHeight: '216',
      lipHeight: '18',
      width: '1288',
      openingWidth: '1182',
    },
    settled: true,
  },
  {
    name: 'packet bulkhead',
    model: 'packet',
    formKind: 'free-section',
    spaceName: 'Between seats and bulkhead',
    seatState: 'Driver’s seat as Jiro drives',
    unit: 'mm',
    takenBy: 'daniel',
    daysAgo: 6,
    free: VAN_SECTION,
    readings: {
      'duct-top-x': '0',
      'duct-top-y': '62',
      'duct-edge-x': '74',
      'duct-edge-y': '62',
      'duct-foot-x': '74',
      'duct-foot-y': '0',
      'floor-end-x': '318',
      'floor-end-y': '0',
      'seat-top-x': '206',
      'seat-top-y': '640',
      'wall-top-x': '0',
      'wall-top-y': '640',
      width: '1410',
      openingWidth: '1150',
    },
    settled: true,
  },
];
