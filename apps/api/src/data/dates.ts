// A day of the shop (`2026-11-24`) in a date column, which the driver hands over as midnight UTC.

export function fromShopDate(day: string | null): Date | null {
  return day === null ? null : new Date(`${day}T00:00:00Z`);
}

export function toShopDate(date: Date | null): string | null {
  return date === null ? null : date.toISOString().slice(0, 10);
}
