import { defineConfig } from 'vitest/config';

// Vitest's reporter uses Map.groupBy, which Node 20 lacks: without it a failing run would crash before saying why.
if (!('groupBy' in Map)) {
  Object.assign(Map, {
    groupBy: <K, T>(items: Iterable<T>, keyOf: (item: T, index: number) => K): Map<K, T[]> => {
      const groups = new Map<K, T[]>();
      for (const [index, item] of [...items].entries()) {
        const key = keyOf(item, index);
        groups.set(key, [...(groups.get(key) ?? []), item]);
      }
      return groups;
    },
  });
}

/** They build the app anew or listen to its clock: nothing else runs meanwhile. */
const ALONE = ['shell', 'sound', 'start'].map((name) => `tests/browser/${name}.test.ts`);

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
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
          // Simulations take their time, and more of it on a busy machine.
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          exclude: ALONE,
          environment: 'node',
          testTimeout: 180_000,
          hookTimeout: 180_000,
          // One file at a time: what is measured and killed here should have the machine to itself.
          fileParallelism: false,
          sequence: { groupOrder: 1 },
          // A page on a busy machine may be slow to show what it will.
          expect: { poll: { timeout: 20_000 } },
          globalSetup: ['tests/browser/serve.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'alone',
          include: ALONE,
          environment: 'node',
          testTimeout: 180_000,
          hookTimeout: 180_000,
          fileParallelism: false,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
