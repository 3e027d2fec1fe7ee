// Writes the SQL of a new migration from the difference between prisma/migrations and prisma/schema.prisma:
//   npm run migration -- name_that_reads_as_a_sentence
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { startEmbeddedPostgres } from '../packages/database/src/embedded.ts';
import { MIGRATIONS_FOLDER } from '../packages/database/src/migrate.ts';
import { NO_FILTER, withSchemaEngine } from '../packages/database/src/schema-engine.ts';

const name = process.argv[2];
if (name === undefined || !/^[a-z][a-z0-9_]+$/.test(name)) {
  process.stderr.write('Give the migration a name: npm run migration -- quotes_remember_who_asked\n');
  process.exit(2);
}
const root = path.resolve(import.meta.dirname, '..');
const schemaText = readFileSync(path.join(root, 'prisma/schema.prisma'), 'utf8');
const before = schemaOfLastMigration();
const dataFolder = mkdtempSync(path.join(tmpdir(), 'gusset-migration-'));
const database = await startEmbeddedPostgres({ dataFolder });
try {
  const { stdout } = await withSchemaEngine(database.adminUrl, schemaText, (engine) =>
    engine.diff({
      from: before === null ? { tag: 'empty' } : datamodel(before),
      to: datamodel(schemaText),
      script: true,
      exitCode: null,
      filters: NO_FILTER,
    }),
  );
  if (stdout === null || stdout === undefined || stdout.trim() === '' || stdout.includes('empty migration')) {
    process.stdout.write('The schema and the migrations agree: nothing to write.\n');
  } else {
    const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14);
    const folder = path.join(MIGRATIONS_FOLDER, `${stamp}_${name}`);
    mkdirSync(folder, { recursive: true });
    writeFileSync(path.join(folder, 'migration.sql'), stdout);
    writeFileSync(path.join(folder, 'schema.prisma'), schemaText);
    process.stdout.write(
      `Wrote ${path.relative(root, folder)}/migration.sql. Read it. For each new shop table add: SELECT gusset_isolate('the_table');\n`,
    );
  }
} finally {
  await database.stop();
  rmSync(dataFolder, { recursive: true, force: true });
}

/** Each migration keeps the schema it leads to, so that the next difference needs no database to look at. */
function schemaOfLastMigration(): string | null {
  const last = readdirSync(MIGRATIONS_FOLDER)
    .filter((entry) => existsSync(path.join(MIGRATIONS_FOLDER, entry, 'schema.prisma')))
    .sort()
    .at(-1);
  return last === undefined
    ? null
    : readFileSync(path.join(MIGRATIONS_FOLDER, last, 'schema.prisma'), 'utf8');
}

function datamodel(content: string) {
  return { tag: 'schemaDatamodel' as const, files: [{ path: 'schema.prisma', content }] };
}
