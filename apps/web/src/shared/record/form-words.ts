// What a contract's issue says at a field, where the contract has no sentence of its own. Pure.
import type { z } from 'zod';

/** For `schema.safeParse(value, { error: formWords })`; a message that the schema states goes before it. */
export function formWords(issue: z.core.$ZodRawIssue): string | undefined {
  switch (issue.code) {
    case 'invalid_type':
    case 'invalid_union':
      return isNothing(issue.input) ? 'This is needed.' : 'A whole number is needed here.';
    case 'invalid_value':
      return 'Choose one.';
    case 'too_small':
      return `${issue.inclusive === false ? 'Above' : 'At least'} ${issue.minimum} is accepted.`;
    case 'too_big':
      return `At most ${issue.maximum} is accepted.`;
    case 'invalid_format':
      return isNothing(issue.input) ? 'Choose one.' : undefined;
    default:
      return undefined;
  }
}

function isNothing(value: unknown): boolean {
  return value === null || value === undefined || value === '';
}
