import { defineConfig } from 'vitest/config';

/** The same property-test examples on every run; FC_SEED draws others. */
const setupFiles = ['./scripts/fast-check-seed.ts'];

/** A guard against tests that hang, not a measure of speed: a busy machine takes its time over a property. */
const testTimeout = 120_000;

const common = { setupFiles, testTimeout, hookTimeout: testTimeout };

/** One project a room, so a failure names the room; `npx vitest run --project core` runs one of them. */
export default defineConfig({
  test: {
    projects: [
      { test: { name: 'core', ...common, include: ['core/**/*.test.ts'] } },
      { test: { name: 'reference', ...common, include: ['reference/**/*.test.ts'] } },
      {
        test: {
          name: 'examples',
          ...common,
          include: ['examples/**/*.test.ts', 'cli/**/*.test.ts', 'scripts/**/*.test.ts'],
        },
      },
      { test: { name: 'store', ...common, include: ['store/**/*.test.ts'] } },
      { test: { name: 'server', ...common, include: ['server/**/*.test.ts'] } },
      {
        test: {
          name: 'web',
          ...common,
          include: ['web/**/*.test.ts', 'web/**/*.test.tsx'],
          exclude: ['web/e2e/**'],
        },
      },
    ],
  },
});
