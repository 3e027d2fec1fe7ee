// Prisma's own schema engine as WebAssembly: no binary to download, works over the same `pg` driver as the API.
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import * as engineModule from '@prisma/schema-engine-wasm/schema_engine_bg';

let loaded: Promise<void> | null = null;

/** The package's own loader imports a .wasm file as a module, which Node does only behind a flag: done by hand here. */
function loadWasm(): Promise<void> {
  loaded ??= (async () => {
    const require = createRequire(import.meta.url);
    const folder = path.dirname(require.resolve('@prisma/schema-engine-wasm'));
    const bytes = await readFile(path.join(folder, 'schema_engine_bg.wasm'));
    // The generated bindings export the import object's functions beside their public face, untyped.
    const bindings: Record<string, unknown> = { ...engineModule };
    const { instance } = await WebAssembly.instantiate(bytes, { './schema_engine_bg.js': engineModule });
    if (typeof bindings.__wbg_set_wasm !== 'function')
      throw new Error('schema engine: bindings not recognised');
    bindings.__wbg_set_wasm(instance.exports);
    const start = instance.exports.__wbindgen_start;
    if (typeof start === 'function') start();
  })();
  return loaded;
}

type Adapter = Awaited<ReturnType<PrismaPg['connect']>>;

/**
 * The adapter splits a script at every semicolon, also inside a function's body. PostgreSQL takes the whole script
 * in one simple query, which is one transaction too: a migration is applied wholly or not at all.
 */
class WholeScriptPg extends PrismaPg {
  private readonly opened: Adapter[] = [];

  override async connect(): ReturnType<PrismaPg['connect']> {
    return this.keep(await super.connect());
  }

  private keep(adapter: Adapter): Adapter {
    this.opened.push(adapter);
    adapter.executeScript = async (script) => {
      await adapter.underlyingDriver().query(script);
    };
    return adapter;
  }

  /** The engine holds an advisory lock on its connection until that is closed, and does not close it itself. */
  async closeAll(): Promise<void> {
    // Newest first: a shadow database is dropped through the connection that made it. Twice is harmless.
    for (const adapter of this.opened.reverse()) await adapter.dispose().catch(() => undefined);
  }
}

/** Works with the engine on a database and closes it. `schemaText` is needed for `diff` only. */
export async function withSchemaEngine<T>(
  url: string,
  schemaText: string | null,
  work: (engine: engineModule.SchemaEngine) => Promise<T>,
): Promise<T> {
  await loadWasm();
  const factory = new WholeScriptPg({ connectionString: url });
  const engine = await engineModule.SchemaEngine.new(
    { datamodels: schemaText === null ? undefined : [['schema.prisma', schemaText]] },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(factory),
  );
  try {
    return await work(engine);
  } finally {
    engine.free();
    await factory.closeAll();
  }
}

/** Nothing is filtered: every table in the public schema belongs to the program. */
export const NO_FILTER = { externalTables: [], externalEnums: [] };
