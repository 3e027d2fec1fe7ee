// The tasks that most jobs go through, with hours and waits to begin with. Hours are estimates (quick / usual / slow,
// one person): correct them after a few jobs of the shop's own. Waits are for 20 °C and ordinary materials; the data
// sheet of the tin in use goes before them. Planning aid only: follow the component and vehicle makers' instructions
// and local law; have a qualified person check safety-critical work.
import type { TaskHours, TaskPrerequisite, TaskTemplate, WaitReason } from '@gusset/contracts/planning';

export type BoxFinish = 'carpet' | 'coating';

const HOUR = 60; // minutes
/** PVA joint: clamps off and handled after 2 h, tested and machined after the full 24 h. */
const GLUE_HANDLED = 2 * HOUR;
const GLUE_CURED = 24 * HOUR;
/** Water-borne roll-on: next coat after 2-4 h, handled after 24 h, bears load (drivers, stacking) after 72 h. */
const COAT_RECOATED = 3 * HOUR;
const COAT_HANDLED = 24 * HOUR;
const COAT_LOADED = 72 * HOUR;
const CARPET_BONDED = 24 * HOUR;

const hours = (min: number, typical: number, max: number): TaskHours => ({ min, typical, max });

const after = (taskKey: string): TaskPrerequisite => ({
  taskKey,
  kind: 'finish-start',
  waitMinutes: 0,
  reason: null,
  keepsBayMinutes: 0,
  byAnotherPerson: false,
});

const afterWait = (
  taskKey: string,
  reason: WaitReason,
  waitMinutes: number,
  keepsBayMinutes: number,
): TaskPrerequisite => ({ ...after(taskKey), reason, waitMinutes, keepsBayMinutes });

const PREPARATION: readonly TaskTemplate[] = [
  {
    key: 'intake',
    title: 'Take the vehicle in: condition, keys, battery and charging',
    skill: 'any',
    hours: hours(0.3, 0.7, 1.2),
    prerequisites: [],
    bayKind: null,
    vehicleOnSite: true,
    breakable: true,
    needsParts: [],
    phase: 'intake',
  },
  {
    key: 'consult',
    title: 'Talk through wishes, listening and budget',
    skill: 'sales',
    hours: hours(0.5, 1, 2),
    prerequisites: [after('intake')],
    bayKind: null,
    vehicleOnSite: false,
    breakable: false,
    needsParts: [],
    phase: 'intake',
  },
  {
    key: 'measure',
    title: 'Measure and photograph the cargo space',
    skill: 'fabrication',
    hours: hours(0.7, 1.5, 3),
    prerequisites: [after('intake')],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: true,
    needsParts: [],
    phase: 'intake',
  },
  {
    key: 'design',
    title: 'Draw the box, list the cuts, check the way in',
    skill: 'fabrication',
    hours: hours(1, 2, 5),
    prerequisites: [after('measure')],
    bayKind: null,
    vehicleOnSite: false,
    breakable: true,
    needsParts: [],
    phase: 'design',
  },
  {
    key: 'order',
    title: 'Order parts; book in and inspect what comes',
    skill: 'any',
    hours: hours(0.3, 0.8, 2),
    prerequisites: [afterWait('design', 'customer', 0, 0)],
    bayKind: null,
    vehicleOnSite: false,
    breakable: true,
    needsParts: [],
    phase: 'parts',
  },
  {
    key: 'mock-up',
    title: 'Mock up and try it in the vehicle',
    skill: 'fabrication',
    hours: hours(0.5, 1, 2),
    prerequisites: [after('design')],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: true,
    needsParts: [],
    phase: 'design',
  },
];

const WOODWORK: readonly TaskTemplate[] = [
  {
    key: 'cut',
    title: 'Gauge the sheets and cut the panels',
    skill: 'table-saw',
    hours: hours(1, 2, 4),
    prerequisites: [after('order'), after('mock-up')],
    bayKind: 'bench',
    vehicleOnSite: false,
    breakable: true,
    needsParts: ['sheet-goods'],
    phase: 'wood',
  },
  {
    key: 'rout',
    title: 'Rout cut-outs, recesses, ports and bevels',
    skill: 'router',
    hours: hours(1, 2, 5),
    prerequisites: [after('cut')],
    bayKind: 'bench',
    vehicleOnSite: false,
    breakable: true,
    needsParts: [],
    phase: 'wood',
  },
  {
    key: 'dry-assemble',
    title: 'Dry assemble',
    skill: 'fabrication',
    hours: hours(0.3, 0.7, 1.5),
    prerequisites: [after('rout')],
    bayKind: 'bench',
    vehicleOnSite: false,
    breakable: true,
    needsParts: [],
    phase: 'wood',
  },
  {
    key: 'glue-up',
    title: 'Glue, clamp, brace and seal',
    skill: 'fabrication',
    hours: hours(1, 2, 4),
    prerequisites: [after('dry-assemble')],
    bayKind: 'bench',
    vehicleOnSite: false,
    breakable: false,
    needsParts: ['hardware'],
    phase: 'wood',
  },
  {
    key: 'leak-test',
    title: 'Leak test, trim, round over and sand',
    skill: 'fabrication',
    hours: hours(0.7, 1.5, 3),
    prerequisites: [afterWait('glue-up', 'glue', GLUE_CURED, GLUE_HANDLED)],
    bayKind: 'bench',
    vehicleOnSite: false,
    breakable: true,
    needsParts: [],
    phase: 'wood',
  },
  {
    key: 'test-fit',
    title: 'Try the box in and out of the vehicle',
    skill: 'fabrication',
    hours: hours(0.3, 0.6, 1.5),
    prerequisites: [after('leak-test')],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: true,
    needsParts: [],
    phase: 'wood',
  },
];

const CARPET: readonly TaskTemplate[] = [
  {
    key: 'carpet',
    title: 'Wrap in carpet',
    skill: 'trim',
    hours: hours(1, 2.5, 5),
    prerequisites: [after('test-fit')],
    bayKind: 'finishing',
    vehicleOnSite: false,
    breakable: false,
    needsParts: ['finish'],
    phase: 'finish',
  },
];

/** The usual hours of two coats (1.5 / 2.5 / 5) shared between them; the first has the masking. */
const COATING: readonly TaskTemplate[] = [
  {
    key: 'coat-1',
    title: 'Coat 1',
    skill: 'finishing',
    hours: hours(0.9, 1.5, 3),
    prerequisites: [after('test-fit')],
    bayKind: 'finishing',
    vehicleOnSite: false,
    breakable: false,
    needsParts: ['finish'],
    phase: 'finish',
  },
  {
    key: 'coat-2',
    title: 'Coat 2',
    skill: 'finishing',
    hours: hours(0.6, 1, 2),
    prerequisites: [afterWait('coat-1', 'coat', COAT_RECOATED, COAT_RECOATED)],
    bayKind: 'finishing',
    vehicleOnSite: false,
    breakable: false,
    needsParts: [],
    phase: 'finish',
  },
];

const driversAfter = (finish: BoxFinish): TaskPrerequisite =>
  finish === 'carpet'
    ? afterWait('carpet', 'adhesive', CARPET_BONDED, 0)
    : afterWait('coat-2', 'coat', COAT_LOADED, COAT_HANDLED);

const wiringAndFitting = (finish: BoxFinish): readonly TaskTemplate[] => [
  {
    key: 'power-run',
    title: 'Run the power cable: holder with the fuse out, grommets',
    skill: 'electrical',
    hours: hours(2, 4, 8),
    prerequisites: [after('order')],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: true,
    needsParts: ['power'],
    phase: 'wiring',
  },
  {
    key: 'ground',
    title: 'Ground and distribution',
    skill: 'electrical',
    hours: hours(0.5, 1, 2),
    prerequisites: [after('power-run')],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: true,
    needsParts: [],
    phase: 'wiring',
  },
  {
    key: 'signal-leads',
    title: 'Signal, remote and speaker leads',
    skill: 'electrical',
    hours: hours(1.5, 3, 6),
    prerequisites: [after('order')],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: true,
    needsParts: ['signal'],
    phase: 'wiring',
  },
  {
    key: 'amplifier-board',
    title: 'Build and finish the amplifier board',
    skill: 'fabrication',
    hours: hours(1, 2.5, 6),
    prerequisites: [after('cut')],
    bayKind: 'bench',
    vehicleOnSite: false,
    breakable: true,
    needsParts: ['finish'],
    phase: 'fitting',
  },
  {
    key: 'mount-amplifiers',
    title: 'Mount the amplifiers and dress the wiring',
    skill: 'electrical',
    hours: hours(1, 2, 4),
    prerequisites: [
      after('ground'),
      after('signal-leads'),
      afterWait('amplifier-board', finish === 'carpet' ? 'adhesive' : 'coat', 24 * HOUR, 0),
    ],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: true,
    needsParts: ['amplifier'],
    phase: 'fitting',
  },
  {
    key: 'fit-drivers',
    title: 'Fit drivers, terminals and gaskets',
    skill: 'fabrication',
    hours: hours(0.5, 1, 1.5),
    prerequisites: [driversAfter(finish)],
    bayKind: 'bench',
    vehicleOnSite: false,
    breakable: true,
    needsParts: ['driver'],
    phase: 'fitting',
  },
  {
    key: 'install-box',
    title: 'Put the box in and anchor it; two people or a hoist where it is heavy',
    skill: 'fabrication',
    hours: hours(0.5, 1.2, 2.5),
    prerequisites: [after('mount-amplifiers'), after('fit-drivers')],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: true,
    needsParts: [],
    phase: 'fitting',
  },
  {
    key: 'power-up',
    title: 'Checks before power, fuse in, gains',
    skill: 'electrical',
    hours: hours(0.7, 1.2, 2.5),
    prerequisites: [after('install-box')],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: true,
    needsParts: [],
    phase: 'fitting',
  },
  {
    key: 'tune',
    title: 'Tune, and hunt rattles',
    skill: 'tuning',
    hours: hours(1, 2, 6),
    prerequisites: [after('power-up')],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: true,
    needsParts: [],
    phase: 'handover',
  },
  {
    key: 'sign-off',
    title: 'Check and sign off, by a second person',
    skill: 'lead',
    hours: hours(0.3, 0.5, 1),
    prerequisites: [{ ...after('tune'), byAnotherPerson: true }],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: true,
    needsParts: [],
    phase: 'handover',
  },
  {
    key: 'handover',
    title: 'Clean, show, explain and hand over',
    skill: 'any',
    hours: hours(0.5, 0.8, 1.5),
    prerequisites: [after('sign-off')],
    bayKind: 'vehicle',
    vehicleOnSite: true,
    breakable: false,
    needsParts: [],
    phase: 'handover',
  },
];

/** All tasks of a job with one box, in order. */
export function standardTaskTemplate(finish: BoxFinish): readonly TaskTemplate[] {
  return [
    ...PREPARATION,
    ...WOODWORK,
    ...(finish === 'carpet' ? CARPET : COATING),
    ...wiringAndFitting(finish),
  ];
}
