import { defineConfig } from 'vitest/config';

// biome-ignore lint/style/noDefaultExport: the test runner asks for one.
export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['test/**/*.test.ts'],
    // Left alone it keeps a core free, which on two of them is half.
    maxWorkers: '100%',
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // A machine that is busy answers late; a page that never answers still fails.
    expect: { poll: { timeout: 15_000 } },
  },
});
