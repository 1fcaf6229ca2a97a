import { defineConfig } from 'vitest/config';

/** One project a room, so a failure names the room; `npx vitest run --project core` runs one of them. */
export default defineConfig({
  test: {
    projects: [
      { test: { name: 'core', include: ['core/**/*.test.ts'] } },
      { test: { name: 'reference', include: ['reference/**/*.test.ts'] } },
      {
        test: {
          name: 'examples',
          include: ['examples/**/*.test.ts', 'cli/**/*.test.ts', 'scripts/**/*.test.ts'],
        },
      },
      { test: { name: 'store', include: ['store/**/*.test.ts'] } },
      { test: { name: 'server', include: ['server/**/*.test.ts'] } },
      { test: { name: 'web', include: ['web/**/*.test.ts', 'web/**/*.test.tsx'], exclude: ['web/e2e/**'] } },
    ],
  },
});
