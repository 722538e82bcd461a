// Unit, storage, fault and architecture tests; the end-to-end tests have their own runner beside this file.
import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    testTimeout: 30_000,
    // Left to itself it leaves one processor idle, which on a small machine is half of them.
    maxWorkers: availableParallelism(),
  },
});
