import { join } from 'node:path';
import type { NextConfig } from 'next';

/** Workspace packages ship TypeScript sources, so Next compiles them with the app. */
const WORKSPACE_PACKAGES = [
  '@gusset/units',
  '@gusset/contracts',
  '@gusset/acoustics',
  '@gusset/enclosure',
  '@gusset/cargo',
  '@gusset/cutting',
  '@gusset/estimating',
  '@gusset/planning',
  '@gusset/drawings',
  '@gusset/sheets',
];

const config: NextConfig = {
  transpilePackages: WORKSPACE_PACKAGES,
  reactStrictMode: true,
  // Types are checked by `npm test` for the whole house; the build at the first start need not do it again.
  typescript: { ignoreBuildErrors: true },
  poweredByHeader: false,
  // The front door (src/server.ts) adds security headers and compresses nothing twice.
  compress: true,
  compiler: {
    runAfterProductionCompile: async ({ distDir }) => {
      // Only a build needs it; the front door reads these settings too.
      const { compressStatic } = await import('./src/front-door/compress-static.ts');
      await compressStatic(join(distDir, 'static'));
    },
  },
  devIndicators: false,
  // One folder up from apps/: packages are resolved from the workspace root, not from a stray lockfile above it.
  turbopack: { root: new URL('../..', import.meta.url).pathname },
  // `npm run dev` serves the pages without the front door and hands /api on by itself.
  rewrites: async () => {
    const api = process.env.GUSSET_DEV_API;
    return api === undefined ? [] : [{ source: '/api/:path*', destination: `${api}/api/:path*` }];
  },
  experimental: { optimizePackageImports: ['react-aria-components'] },
};

export default config;
