import { planTaskSchema, taskTemplateSchema } from '@gusset/contracts/planning';
import { describe, expect, it } from 'vitest';
import { standardTaskTemplate } from './standard-task-template.ts';
import { tasksFromTemplate, tasksNeeding } from './tasks-from-template.ts';

describe('standardTaskTemplate', () => {
  it.each(['carpet', 'coating'] as const)(
    'has sound tasks whose prerequisites stand before them: %s',
    (finish) => {
      const template = standardTaskTemplate(finish);
      const seen = new Set<string>();
      for (const task of template) {
        expect(taskTemplateSchema.parse(task)).toEqual(task);
        expect(task.hours.min <= task.hours.typical && task.hours.typical <= task.hours.max).toBe(true);
        expect(task.prerequisites.every(({ taskKey }) => seen.has(taskKey))).toBe(true);
        expect(task.bayKind === 'vehicle' ? task.vehicleOnSite : true).toBe(true);
        seen.add(task.key);
      }
      expect(seen.size).toBe(template.length);
    },
  );

  it('adds up to about 18, 38 and 80 hours with carpet', () => {
    const total = (pace: 'min' | 'typical' | 'max') =>
      standardTaskTemplate('carpet').reduce((sum, { hours }) => sum + hours[pace], 0);
    expect(total('min')).toBeCloseTo(18.1, 6);
    expect(total('typical')).toBeCloseTo(37.5, 6);
    expect(total('max')).toBeCloseTo(80.2, 6);
  });

  it('waits for the glue 24 h, between coats 3 h, and for the drivers 24 h on carpet and 72 h on coating', () => {
    const waitOf = (finish: 'carpet' | 'coating', key: string) =>
      standardTaskTemplate(finish).find((task) => task.key === key)?.prerequisites[0]?.waitMinutes;
    expect(waitOf('carpet', 'leak-test')).toBe(24 * 60);
    expect(waitOf('coating', 'coat-2')).toBe(3 * 60);
    expect(waitOf('carpet', 'fit-drivers')).toBe(24 * 60);
    expect(waitOf('coating', 'fit-drivers')).toBe(72 * 60);
  });
});

describe('tasksFromTemplate', () => {
  it('makes tasks of a job at the pace asked for, and puts the wait for approval where it belongs', () => {
    const template = standardTaskTemplate('carpet');
    const tasks = tasksFromTemplate(template, {
      pace: 'max',
      idOf: (key) => `2414/${key}`,
      approvalMinutes: 1440,
    });
    for (const task of tasks) expect(planTaskSchema.parse(task)).toEqual(task);
    expect(tasks.find(({ key }) => key === 'cut')).toMatchObject({ id: '2414/cut', remainingMinutes: 240 });
    expect(tasks.find(({ key }) => key === 'order')?.prerequisites).toMatchObject([
      { taskKey: 'design', reason: 'customer', waitMinutes: 1440 },
    ]);
  });

  it('knows which tasks a kind of part holds', () => {
    expect(tasksNeeding(standardTaskTemplate('coating'), 'finish')).toEqual(['coat-1', 'amplifier-board']);
  });
});
