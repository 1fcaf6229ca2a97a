import { defineConfig } from 'vitest/config';

/** The same property-test examples on every run; FC_SEED draws others. */
const setupFiles = ['./scripts/fast-check-seed.ts'];

/** One project a room, so a failure names the room; `npx vitest run --project core` runs one of them. */
export default defineConfig({
  test: {
    projects: [
      { test: { name: 'core', setupFiles, include: ['core/**/*.test.ts'] } },
      { test: { name: 'reference', setupFiles, include: ['reference/**/*.test.ts'] } },
      {
        test: {
          name: 'examples',
          setupFiles,
          include: ['examples/**/*.test.ts', 'cli/**/*.test.ts', 'scripts/**/*.test.ts'],
        },
      },
      { test: { name: 'store', setupFiles, include: ['store/**/*.test.ts'] } },
      { test: { name: 'server', setupFiles, include: ['server/**/*.test.ts'] } },
      {
        test: {
          name: 'web',
          setupFiles,
          include: ['web/**/*.test.ts', 'web/**/*.test.tsx'],
          exclude: ['web/e2e/**'],
        },
      },
    ],
  },
});
