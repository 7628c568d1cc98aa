import { defineConfig } from 'vitest/config';

/** The tests that hold the calculation, with few cases of each law: every mutant runs them anew. */
// biome-ignore lint/style/noDefaultExport: the test runner asks for one.
export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: [
      'test/calculate/*.test.ts',
      'test/published/wood-handbook.test.ts',
      'test/published/doors.test.ts',
      'test/render/explain.test.ts',
    ],
    // It tests what is drawn, not what is calculated.
    exclude: ['test/calculate/drawn-jobs.test.ts'],
    // The modules are loaded once: a mutant is switched on and off inside of them.
    isolate: false,
    pool: 'threads',
    maxWorkers: 1,
    env: { RUNS: '10', SEED: '1' },
  },
});
