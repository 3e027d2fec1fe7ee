// The smallest input that a procedure's own schema takes, with ids of rows that really exist.
import { randomUUID } from 'node:crypto';
import { z } from 'zod';

type JsonSchema = z.core.JSONSchema.BaseSchema;

/** Where an id came from: `customer.read` has `id`, `job.change` has `jobId`. */
export type KnownIds = (path: string, field: string) => string | null;

export type SampleInput = {
  readonly input: unknown;
  /** False where some id names nothing, because this test makes no such row. */
  readonly isWhole: boolean;
};

/** Names of the fields that hold ids; the key of a send is none. */
export function idFieldsOf(schema: unknown): string[] {
  const found: string[] = [];
  sampleOf(jsonSchemaOf(schema), 'input', (field) => {
    found.push(field);
    return '';
  });
  return found;
}

export function sampleInput(path: string, schemas: readonly unknown[], ids: KnownIds): SampleInput {
  let isWhole = true;
  const samples = schemas.map((schema) =>
    sampleOf(jsonSchemaOf(schema), 'input', (field) => {
      const id = ids(path, field);
      if (id === null) isWhole = false;
      return id ?? randomUUID();
    }),
  );
  return { input: Object.assign({}, ...samples), isWhole };
}

function jsonSchemaOf(schema: unknown): JsonSchema {
  if (!(schema instanceof z.ZodType)) return {};
  return z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });
}

function sampleOf(schema: JsonSchema, field: string, idFor: (field: string) => string): unknown {
  const choices = schema.anyOf ?? schema.oneOf ?? schema.allOf;
  if (choices !== undefined) {
    const first = choices.find((choice) => choice.type !== 'null') ?? choices[0];
    return first === undefined ? null : sampleOf(first, field, idFor);
  }
  if (schema.const !== undefined) return schema.const;
  if (schema.enum !== undefined) return schema.enum[0];
  switch (schema.type) {
    case 'object':
      return Object.fromEntries(
        Object.entries(schema.properties ?? {})
          .filter(([name, property]) => isWanted(name, property, schema.required ?? []))
          .map(([name, property]) => [
            name,
            typeof property === 'boolean' ? null : sampleOf(property, name, idFor),
          ]),
      );
    case 'array':
      return Array.from({ length: schema.minItems ?? 0 }, () =>
        typeof schema.items === 'object' && !Array.isArray(schema.items)
          ? sampleOf(schema.items, field, idFor)
          : null,
      );
    case 'string':
      return sampleText(schema, field, idFor);
    case 'number':
    case 'integer':
      return sampleNumber(schema);
    case 'boolean':
      return false;
    default:
      return null;
  }
}

/** What is needed, and every id, also where it may be left out. */
function isWanted(name: string, property: unknown, required: readonly string[]): boolean {
  return required.includes(name) || /Id$/.test(name) || (name === 'id' && typeof property === 'object');
}

function sampleText(schema: JsonSchema, field: string, idFor: (field: string) => string): string {
  if (schema.format === 'uuid') return field === 'key' ? randomUUID() : idFor(field);
  if (schema.format === 'date') return '2026-11-24';
  if (schema.format === 'date-time') return '2026-11-24T09:00:00Z';
  if (schema.format === 'email') return 'somebody@example.com';
  return 'sample'.padEnd(schema.minLength ?? 0, 'x').slice(0, schema.maxLength ?? undefined);
}

function sampleNumber(schema: JsonSchema): number {
  if (typeof schema.minimum === 'number') return schema.minimum;
  return typeof schema.exclusiveMinimum === 'number' ? schema.exclusiveMinimum + 1 : 1;
}
