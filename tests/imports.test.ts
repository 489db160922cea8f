import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

import { findRing, homeOf, readSource, readSources, type Source } from './tools/sources.ts';

/** What a folder may take. */
interface Rule {
  /** As DEVELOPERS.md says it, word for word. */
  readonly words: string;
  /** Folders, whole. */
  readonly all?: readonly string[];
  /** Folders whose types may be taken, and nothing else. */
  readonly types?: readonly string[];
  /** Single files of other folders. */
  readonly files?: readonly string[];
}

const CORE = ['basics', 'court', 'pressure', 'log', 'games', 'stats'];

/** Who may take from whom. A folder may always take from itself. */
const TABLE: Readonly<Record<string, Rule>> = {
  basics: { words: 'nothing' },
  court: { words: 'basics', all: ['basics'] },
  pressure: { words: 'basics', all: ['basics'] },
  log: { words: 'basics, court, pressure', all: ['basics', 'court', 'pressure'] },
  games: { words: 'basics, court, pressure, log', all: ['basics', 'court', 'pressure', 'log'] },
  // The ingredients of a round are part of what its shots are weighed by.
  stats: { words: 'basics, court, pressure, log', all: ['basics', 'court', 'pressure', 'log'] },
  sound: {
    words: 'basics, pressure, types of games',
    all: ['basics', 'pressure'],
    types: ['games'],
    files: ['assets/sound/clips.json'],
  },
  storage: { words: 'basics, log', all: ['basics', 'log'] },
  store: {
    words: 'the core, `sound/countdown.ts` and `sound/gameClock.ts`',
    all: CORE,
    files: ['renderer/sound/countdown.ts', 'renderer/sound/gameClock.ts'],
  },
  charts: { words: 'basics, court, types of stats', all: ['basics', 'court'], types: ['stats'] },
  screens: {
    words: 'store, charts, the core; of stats only types',
    all: ['store', 'charts', ...CORE.filter((folder) => folder !== 'stats')],
    types: ['stats'],
  },
  // What hung on a shot is worked out as on court, but for thousands of shots, which is no work for the page.
  fitting: {
    words: 'basics, pressure, log, games, stats, `store/whatHangs.ts`',
    all: ['basics', 'pressure', 'log', 'games', 'stats'],
    files: ['renderer/store/whatHangs.ts'],
  },
  report: { words: 'the core', all: CORE },
  'the page itself': {
    words: 'everything',
    all: [...CORE, 'sound', 'storage', 'fitting', 'store', 'charts', 'screens'],
    files: ['electron/bridge.ts'],
  },
  electron: { words: 'nothing of `renderer/`' },
};

/** Where each package comes in. What is not named here comes in nowhere. */
const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  react: ['charts', 'screens', 'the page itself'],
  'react-dom': ['the page itself'],
  zustand: ['store', 'screens'],
  howler: ['renderer/sound/speaker.ts'],
  '@sqlite.org/sqlite-wasm': ['storage'],
  valibot: ['log'],
  papaparse: ['log'],
  'pure-rand': ['basics'],
  uuid: ['basics'],
  '@fontsource/barlow': ['the page itself'],
  '@fontsource/barlow-condensed': ['the page itself'],
  electron: ['electron'],
  vite: ['electron'],
};

const sources = readSources(['renderer', 'electron']);

describe('the way of the imports', () => {
  it('has every source file in view', () => {
    expect(sources.length).toBeGreaterThan(100);
    expect(new Set(sources.map(({ path }) => homeOf(path)))).toEqual(new Set(Object.keys(TABLE)));
  });
  it('goes as the table says, types and all', () => {
    expect(sources.flatMap(strays)).toEqual([]);
  });
  it('has no ring in it, types and all', () => {
    expect(findRing(sources)).toBeNull();
  });
  it('is told in DEVELOPERS.md with the same words', () => {
    const told = new Map<string, string>();
    for (const line of readFileSync(new URL('../DEVELOPERS.md', import.meta.url), 'utf8').split('\n')) {
      const [, folder = '', , may = ''] = line.split('|').map((cell) => cell.trim());
      const name = folder === '`main.tsx` and beside it' ? 'the page itself' : folder.replaceAll('`', '');
      if (Object.hasOwn(TABLE, name)) told.set(name, may);
    }
    const wanted = Object.entries(TABLE).filter(([folder]) => folder !== 'electron');
    expect(Object.fromEntries(told)).toEqual(
      Object.fromEntries(wanted.map(([folder, { words }]) => [folder, words])),
    );
  });
});

describe('packages', () => {
  it('come in where they belong and nowhere else', () => {
    const astray = sources.flatMap(({ path, takes }) =>
      takes
        .filter(({ from }) => !isFile(from) && !from.startsWith('node:'))
        .filter(({ from }) => !PACKAGES[from]?.some((place) => place === homeOf(path) || place === path))
        .map(({ from }) => `${path} takes ${from}`),
    );
    expect(astray).toEqual([]);
  });
  it('of Node come into electron/ and the report’s front door alone', () => {
    const homes = sources.filter(({ takes }) => takes.some(({ from }) => from.startsWith('node:')));
    expect(homes.filter(({ path }) => !/^(?:electron\/|renderer\/report\/main\.ts$)/.test(path))).toEqual([]);
  });
});

describe('the core', () => {
  it('asks nobody for the time, for chance or for the place it runs in', () => {
    const asking = sources.filter(({ path, asks }) => CORE.includes(homeOf(path)) && asks.length > 0);
    expect(asking.map(({ path, asks }) => `${path}: ${asks.join(', ')}`)).toEqual([]);
  });
});

describe('a source file', () => {
  it('is at most 400 lines long', () => {
    expect(sources.filter(({ lines }) => lines > 400).map(({ path }) => path)).toEqual([]);
  });
});

describe('this check itself', () => {
  const read = (path: string, text: string) => readSource(path, text);

  it('sees every way of taking from another file', () => {
    const { takes } = read(
      'renderer/log/new.ts',
      `import { a } from './book.ts';
       import type { B } from './events.ts';
       import { type C } from './draft.ts';
       import type {} from './roundCells.ts';
       import './facts.ts';
       export { d } from './fold.ts';
       export type { E } from './begin.ts';
       export * from './envelope.ts';
       const f = import('./csvRead.ts');
       type G = import('./csvRow.ts').CsvRow;
       new Worker(new URL('./csvWrite.ts', import.meta.url));
       import papa from 'papaparse/deep/file';`,
    );
    const seen = takes.map(
      ({ from, types }) => `${from.replace('renderer/log/', '')}${types ? ' (types)' : ''}`,
    );
    expect(seen.toSorted()).toEqual([
      'begin.ts (types)',
      'book.ts',
      'csvRead.ts',
      'csvRow.ts (types)',
      'csvWrite.ts',
      'draft.ts (types)',
      'envelope.ts',
      'events.ts (types)',
      'facts.ts',
      'fold.ts',
      'papaparse',
      'roundCells.ts (types)',
    ]);
  });
  it.each([
    ['renderer/basics/new.ts', `import { COURTS } from '../court/ruleSets.ts';`],
    ['renderer/basics/new.ts', `import type { RuleSet } from '../court/ruleSets.ts';`],
    ['renderer/sound/new.ts', `import { solve } from '../games/solver.ts';`],
    ['renderer/charts/new.tsx', `import { proportion } from '../stats/proportion.ts';`],
    ['renderer/store/new.ts', `import { x } from '../sound/gym.ts';`],
    ['electron/new.ts', `import type { Book } from '../renderer/log/book.ts';`],
    ['renderer/screens/new.ts', `import type { Bridge } from '../../electron/bridge.ts';`],
    ['renderer/main2.ts', `import { start } from '../electron/bridge.ts';`],
  ])('finds %s going astray by %s', (path, text) => {
    expect(strays(read(path, text))).toHaveLength(1);
  });
  it.each([
    ['renderer/sound/new.ts', `import type { Rule } from '../games/rule.ts';`],
    ['renderer/store/new.ts', `import { x } from '../sound/gameClock.ts';`],
    ['renderer/main2.ts', `import type {} from '../electron/bridge.ts';`],
  ])('lets %s go by %s', (path, text) => {
    expect(strays(read(path, text))).toEqual([]);
  });
  it('finds a ring of three', () => {
    const file = (path: string, from: string): Source => ({
      path,
      lines: 1,
      takes: [{ from, types: true }],
      asks: [],
    });
    expect(findRing([file('a', 'b'), file('b', 'c'), file('c', 'a')])).toEqual(['a', 'b', 'c', 'a']);
    expect(findRing([file('a', 'b'), file('b', 'c'), file('c', 'd')])).toBeNull();
  });
  it.each([
    ['Date.now()', 'Date.now'],
    ['new Date()', 'new Date()'],
    ['Date()', 'Date()'],
    ['Math.random()', 'Math.random'],
    ['performance.now()', 'performance.now'],
    ['crypto.getRandomValues(x)', 'crypto.getRandomValues'],
    ['new Date(0).getHours()', 'getHours'],
  ])('hears %s', (text, asked) => {
    expect(read('renderer/log/new.ts', text).asks).toEqual([asked]);
  });
  it('hears nothing where a moment is given', () => {
    expect(
      read('renderer/log/new.ts', 'new Date(at).getUTCDay(); Math.floor(1.5); Date.UTC(2026, 0);').asks,
    ).toEqual([]);
  });
});

function isFile(from: string): boolean {
  return /^(?:renderer|electron|assets)\//.test(from);
}

/** Imports of one file that the table does not allow. */
function strays({ path, takes }: Source): string[] {
  const home = homeOf(path);
  const rule = TABLE[home] ?? { words: '' };
  return takes
    .filter(({ from }) => isFile(from) && !from.endsWith('.css'))
    .filter(({ from, types }) => {
      const target = homeOf(from);
      if (target === home || rule.all?.includes(target)) return false;
      if (types && rule.types?.includes(target)) return false;
      // The two sides share the types of the bridge, and nothing else.
      if (from === 'electron/bridge.ts') return !(types && rule.files?.includes(from));
      return !rule.files?.includes(from);
    })
    .map(({ from, types }) => `${path} takes ${types ? 'types of ' : ''}${from}`);
}
