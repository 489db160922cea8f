import { defineConfig } from 'vitest/config';

const root = new URL('..', import.meta.url).pathname;

export default defineConfig({
  root,
  test: {
    // A run that finds no test, or a test marked `only`, is a fault.
    passWithNoTests: false,
    allowOnly: false,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**'],
          environment: 'node',
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          testTimeout: 120_000,
          hookTimeout: 180_000,
          fileParallelism: false,
          globalSetup: ['tests/browser/serve.ts'],
        },
      },
    ],
  },
});
