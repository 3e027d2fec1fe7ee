// Who may do what: the one table. The API refuses by it, the screens hide by it.

export const ROLES = ['owner', 'estimator', 'technician', 'office'] as const;
export type Role = (typeof ROLES)[number];

/** What each role is for, as the people screen says it. */
export const ROLE_MEANING: Record<Role, string> = {
  owner: 'Everything, people and settings included',
  estimator: 'Designs, prices, quotes and plans jobs',
  technician: 'Measures, builds and reports work; sees no costs or margins',
  office: 'Customers, money, orders and dates; edits no designs',
};

const everyone = ['owner', 'estimator', 'technician', 'office'] as const;
const designers = ['owner', 'estimator'] as const;
const money = ['owner', 'estimator', 'office'] as const;
const atTheSaw = ['owner', 'estimator', 'technician'] as const;

export const PERMISSIONS = {
  'job.read': everyone,
  'job.edit': money,
  'survey.edit': atTheSaw,
  'design.edit': designers,
  'parts.edit': money,
  'delivery.edit': everyone,
  'money.read': money,
  'price.edit': money,
  'quote.send': money,
  'plan.edit': money,
  'task.work': everyone,
  'customer.read': everyone,
  'customer.edit': money,
  'vehicle.read': everyone,
  'vehicle.edit': everyone,
  'catalogue.read': everyone,
  'catalogue.edit': money,
  /** The calliper reading of a real sheet and nothing else of the catalogue. */
  'board.measure': atTheSaw,
  /** Says that a sheet has been cut, and keeps the rack of offcuts. */
  'cut.report': atTheSaw,
  'supplier.read': money,
  'supplier.edit': money,
  'people.read': everyone,
  'people.manage': ['owner'],
  'leave.edit': money,
  'bay.edit': money,
  'shop.read': everyone,
  'shop.edit': ['owner'],
  'list.export': money,
  'record.read': ['owner'],
} as const satisfies Record<string, readonly Role[]>;

export type Permission = keyof typeof PERMISSIONS;

export function may(role: Role, permission: Permission): boolean {
  const allowed: readonly Role[] = PERMISSIONS[permission];
  return allowed.includes(role);
}
