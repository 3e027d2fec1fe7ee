// Who can do a task and where it is done. No schema here: pages that name a skill need not send the validator.
export const SKILLS = [
  'any',
  'sales',
  'fab',
  'saw',
  'router',
  'trim',
  'finish',
  'elec',
  'tune',
  'lead',
] as const;
export type Skill = (typeof SKILLS)[number];

/** What each skill is called on screens. */
export const SKILL_NAME: Record<Skill, string> = {
  any: 'Anyone',
  sales: 'Customer talk',
  fab: 'Fabrication',
  saw: 'Table saw',
  router: 'Router',
  trim: 'Carpet and vinyl',
  finish: 'Coating and paint',
  elec: 'Wiring',
  tune: 'Tuning',
  lead: 'Final check',
};

export const BAY_KINDS = ['bench', 'vehicle', 'finishing'] as const;
export type BayKind = (typeof BAY_KINDS)[number];
