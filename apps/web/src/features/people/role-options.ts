import { ROLE_MEANING, ROLES, type Role } from '@gusset/contracts/access';
import type { Option } from '../../shared/controls/option.ts';

export const ROLE_OPTIONS: readonly Option<Role>[] = ROLES.map((id) => ({
  id,
  label: id.charAt(0).toUpperCase() + id.slice(1),
  detail: ROLE_MEANING[id],
}));
