import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    maxWorkers: '100%', // the default leaves a core idle, of two
    projects: [
      {
        test: {
          name: 'unit',
          include: [
            'packages/*/src/**/*.test.ts',
            'apps/*/src/**/*.test.ts',
            'scripts/**/*.test.ts',
            'prisma/seed/**/*.test.ts',
          ],
          environment: 'node',
          isolate: false, // files share what they import; engines keep no state, the API keeps its own in `deps`
          testTimeout: 30_000, // laws over thousands of cases, also on a busy machine
        },
      },
      {
        test: {
          name: 'api',
          include: ['apps/api/test/**/*.test.ts', 'packages/database/test/**/*.test.ts'],
          environment: 'node',
          isolate: false,
          globalSetup: ['apps/api/test/support/postgres.ts'],
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
