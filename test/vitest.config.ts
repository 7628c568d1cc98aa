import { defineConfig } from 'vitest/config';

// biome-ignore lint/style/noDefaultExport: the test runner asks for one.
export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['test/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // A machine that is busy answers late; a page that never answers still fails.
    expect: { poll: { timeout: 15_000 } },
  },
});
