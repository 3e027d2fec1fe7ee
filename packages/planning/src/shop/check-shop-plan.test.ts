import type { ShopPlan } from '@gusset/contracts/planning';
import { describe, expect, it } from 'vitest';
import { quarryRoad } from '../../bench/quarry-road.ts';
import { checkShopPlan } from './check-shop-plan.ts';
import { planned } from './small-shop.ts';

describe('checkShopPlan', () => {
  it('finds each kind of fault in a spoilt plan', () => {
    const input = quarryRoad(2);
    const plan = planned(input);
    const spoil = (id: string, changes: Partial<ShopPlan['tasks'][number]>): ShopPlan => ({
      ...plan,
      tasks: plan.tasks.map((one) => (one.taskId === id ? { ...one, ...changes } : one)),
    });
    const rules = (spoilt: ShopPlan) => new Set(checkShopPlan(input, spoilt).map(({ rule }) => rule));
    const night = [{ startsAt: '2026-11-25T02:00:00Z', endsAt: '2026-11-25T04:00:00Z' }];
    const early = { segments: night, startsAt: '2026-11-25T02:00:00Z', endsAt: '2026-11-25T04:00:00Z' };
    expect(rules(spoil('job-2400/cut', { ...early }))).toContain('hours');
    expect(rules(spoil('job-2400/tune', { ...early }))).toContain('order');
    expect(rules(spoil('job-2400/power-run', { ...early }))).toContain('part');
    expect(rules(spoil('job-2400/cut', { personId: 'nowak' }))).toContain('skill');
    expect(rules(spoil('job-2400/cut', { bayId: 'finishing' }))).toContain('bay');
    expect(rules(spoil('job-2400/cut', { segments: [] }))).toContain('length');
    expect(rules({ ...plan, tasks: plan.tasks.slice(1) })).toContain('missing');
    const measure = plan.tasks.find(({ taskId }) => taskId === 'job-2400/measure');
    expect(rules(spoil('job-2401/measure', { ...measure, taskId: 'job-2401/measure' }))).toContain(
      'person-twice',
    );
  });
});
