// An invented shop, Quarry Road Sound, with any number of invented jobs: for the bench and the tests.
import type { PlanJob, PlanPerson, ShopPlanInput, WeeklyHours } from '@gusset/contracts/planning';
import { seededRandom } from '../src/core/seeded-random.ts';
import { standardTaskTemplate } from '../src/shop/standard-task-template.ts';
import { tasksFromTemplate, tasksNeeding } from '../src/shop/tasks-from-template.ts';

const day = [
  { from: '08:00', until: '12:00' },
  { from: '12:30', until: '17:00' },
];

export const SHOP_WEEK: WeeklyHours = {
  monday: day,
  tuesday: day,
  wednesday: day,
  thursday: day,
  friday: day,
  saturday: [],
  sunday: [],
};

const person = (id: string, name: string, skills: string[]): PlanPerson => ({
  id,
  name,
  skills,
  leave: [],
  hours: null,
});

export const PEOPLE: readonly PlanPerson[] = [
  person('ilves', 'Ilves', ['fabrication', 'table-saw', 'router']),
  person('sato', 'Sato', ['electrical', 'tuning']),
  person('bello', 'Bello', ['fabrication', 'table-saw', 'trim', 'finishing']),
  person('nowak', 'Nowak', ['sales', 'lead', 'electrical', 'tuning']),
];

/** `count` jobs begun from the standard tasks, with parts due over the next days; the same for the same seed. */
export function quarryRoad(count: number, seed = 1): ShopPlanInput {
  const random = seededRandom(seed);
  const jobs = Array.from({ length: count }, (_, j): PlanJob => {
    const finish = random() < 0.5 ? 'carpet' : 'coating';
    const template = standardTaskTemplate(finish);
    const id = `job-${2400 + j}`;
    const due = (from: number, span: number) => `2026-${dateAfter(from + Math.floor(random() * span))}`;
    return {
      id,
      number: 2400 + j,
      rank: 0,
      promisedOn: due(10 + j * 3, 8),
      approvedAt: null,
      tasks: tasksFromTemplate(template, { pace: 'typical', idOf: (key) => `${id}/${key}` }),
      partDates: [
        {
          lineKey: 'fuse-holder',
          description: '80 A fuse holder',
          expectedOn: due(1, 6),
          receivedOn: null,
          neededByTaskKeys: tasksNeeding(template, 'power'),
        },
        {
          lineKey: 'drivers',
          description: 'Quince 300 driver, pair',
          expectedOn: due(1, 9),
          receivedOn: null,
          neededByTaskKeys: tasksNeeding(template, 'driver'),
        },
      ],
    };
  });
  return {
    now: '2026-11-24T10:07:00Z',
    calendar: { timeZone: 'Europe/Lisbon', weeklyHours: SHOP_WEEK, closedOn: ['2026-12-25'] },
    people: [...PEOPLE],
    bays: [
      { id: 'bay-1', name: 'Bay 1', kinds: ['vehicle'] },
      { id: 'bay-2', name: 'Bay 2', kinds: ['vehicle'] },
      { id: 'bench-1', name: 'Long bench', kinds: ['bench'] },
      { id: 'bench-2', name: 'Short bench', kinds: ['bench'] },
      { id: 'finishing', name: 'Finishing', kinds: ['finishing'] },
    ],
    jobs,
    settings: {
      waitFactor: 1,
      promiseBufferMinutes: 240,
      partsInHandAt: '13:00',
      unknownPartDays: 7,
      vehicleMoveMinutes: 15,
    },
  };
}

/** Month and day so many days after 24 November, within the year. */
function dateAfter(days: number): string {
  const ofNovember = 24 + days;
  if (ofNovember <= 30) return `11-${String(ofNovember).padStart(2, '0')}`;
  return `12-${String(Math.min(31, ofNovember - 30)).padStart(2, '0')}`;
}
