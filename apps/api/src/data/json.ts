// JSON columns: what goes in is plain data; what comes out is parsed by its contract before anyone trusts it.
import { Prisma } from '@gusset/database';

/** A value for a JSON column; null is stored as a database null. */
export function asJson(value: unknown): Prisma.InputJsonValue | typeof Prisma.DbNull {
  if (value === null || value === undefined) return Prisma.DbNull;
  // Dates become text and undefined keys go, as the column will hold them; the result is JSON by construction.
  const plain: Prisma.InputJsonValue = JSON.parse(JSON.stringify(value));
  return plain;
}

/** For columns that are never null. */
export function asRequiredJson(value: unknown): Prisma.InputJsonValue {
  const plain: Prisma.InputJsonValue = JSON.parse(JSON.stringify(value ?? {}));
  return plain;
}
