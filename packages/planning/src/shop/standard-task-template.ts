// The tasks that most jobs go through, with hours and waits to begin with. Hours are estimates (quick / usual / slow,
// one person): correct them after a few jobs of the shop's own. Waits are for 20 °C and ordinary materials; the data
// sheet of the tin in use goes before them. Planning aid only: follow the component and vehicle makers' instructions
// and local law; have a qualified person check safety-critical work.
import type { TaskTemplate } from '@gusset/contracts/planning';
import { fittingTasks } from './fitting-tasks.ts';
import { after, afterWait, COAT_RECOATED, GLUE_CURED, GLUE_HANDLED, hours } from './usual-waits.ts';

export type BoxFinish = 'carpet' | 'coating';

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

/** All tasks of a job with one box, in order. */
export function standardTaskTemplate(finish: BoxFinish): readonly TaskTemplate[] {
  return [...PREPARATION, ...WOODWORK, ...(finish === 'carpet' ? CARPET : COATING), ...fittingTasks(finish)];
}
