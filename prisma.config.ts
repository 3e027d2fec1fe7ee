import { defineConfig } from 'prisma/config';

// Only `prisma generate`, `format` and `validate` are used: migrations run through packages/database/src/migrate.ts.
export default defineConfig({ schema: 'prisma/schema.prisma', migrations: { path: 'prisma/migrations' } });
