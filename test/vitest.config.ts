import { defineConfig } from 'vitest/config';

// biome-ignore lint/style/noDefaultExport: the test runner asks for one.
export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    globalSetup: ['test/support/built-program.ts'],
    include: ['test/**/*.test.ts'],
    // Left alone it keeps a core free, which on two of them is half.
    maxWorkers: '100%',
    // The code keeps no state but caches, so that files share the modules that are loaded: half of the time was loading.
    isolate: false,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // A machine that is busy answers late; a page that never answers still fails.
    expect: { poll: { timeout: 15_000 } },
  },
});
