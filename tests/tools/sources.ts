import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative, sep } from 'node:path';
import { parseSync, Visitor, type ParseResult } from 'oxc-parser';

const ROOT = join(import.meta.dirname, '../..');

/** One thing a source file takes from another file or from a package. */
export interface Taken {
  /** A path from the root of the project, or the name of a package. */
  readonly from: string;
  /** Only types are taken; nothing of it is left in the built app. */
  readonly types: boolean;
}

export interface Source {
  /** Path from the root of the project, with `/`. */
  readonly path: string;
  readonly lines: number;
  readonly takes: readonly Taken[];
  /** Where it asks the machine for the time, for chance, or for the place it runs in. */
  readonly asks: readonly string[];
}

/** Every source file below these folders, read. Settings of the build are no part of the app. */
export function readSources(folders: readonly string[]): Source[] {
  return folders.flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
      .map((path) => `${folder}/${path.split(sep).join('/')}`)
      .filter((path) => /\.tsx?$/.test(path) && !path.endsWith('.config.ts'))
      .toSorted()
      .map((path) => readSource(path, readFileSync(join(ROOT, path), 'utf8'))),
  );
}

/** Reads one source file. @throws Error where it cannot be parsed, or takes from a file that is not there */
export function readSource(path: string, text: string): Source {
  const parsed = parseSync(path, text);
  const [fault] = parsed.errors;
  if (fault) throw new Error(`${path}: ${fault.message}`);
  const { takes, asks } = walk(parsed);
  const all = [...staticTakes(parsed, text), ...takes];
  return {
    path,
    lines: text.trimEnd().split('\n').length,
    takes: all.map(({ from, types }) => ({ from: resolved(path, from), types })),
    asks,
  };
}

function staticTakes({ module }: ParseResult, text: string): Taken[] {
  const takes: Taken[] = [];
  for (const { moduleRequest, entries, start } of module.staticImports) {
    // `import type {} from` names nothing, and takes nothing but types all the same.
    const whole = /^import\s+type\b/.test(text.slice(start, start + 40));
    const types = whole || (entries.length > 0 && entries.every((entry) => entry.isType));
    takes.push({ from: moduleRequest.value, types });
  }
  for (const { entries } of module.staticExports) {
    for (const { moduleRequest, isType } of entries) {
      if (moduleRequest) takes.push({ from: moduleRequest.value, types: isType });
    }
  }
  return takes;
}

/** What a program could ask the machine for, as `object.property`. Local time depends on where the machine stands. */
const ASKING = new Set(['Date.now', 'Math.random']);
const ASKING_OBJECTS = new Set(['performance', 'crypto', 'globalThis', 'process']);
const LOCAL_TIME = /^(?:get|set)(?:FullYear|Month|Date|Day|Hours|Minutes|Seconds|TimezoneOffset)$/;

function walk({ program }: ParseResult): { takes: Taken[]; asks: string[] } {
  const takes: Taken[] = [];
  const asks: string[] = [];
  const visitor = new Visitor({
    ImportExpression: ({ source }) => {
      if (source.type === 'Literal' && typeof source.value === 'string')
        takes.push({ from: source.value, types: false });
    },
    TSImportType: ({ source }) => {
      takes.push({ from: source.value, types: true });
    },
    NewExpression: ({ callee, arguments: [first] }) => {
      if (callee.type !== 'Identifier') return;
      if (callee.name === 'Date' && first === undefined) asks.push('new Date()');
      // A worker's file, and whatever else is named beside the module.
      if (callee.name === 'URL' && first?.type === 'Literal' && typeof first.value === 'string') {
        if (/^\.\.?\/.*\.tsx?$/.test(first.value)) takes.push({ from: first.value, types: false });
      }
    },
    CallExpression: ({ callee }) => {
      if (callee.type === 'Identifier' && callee.name === 'Date') asks.push('Date()');
    },
    MemberExpression: ({ object, property }) => {
      const name = property.type === 'Identifier' ? property.name : '';
      if (object.type === 'Identifier') {
        const asked = `${object.name}.${name}`;
        if (ASKING.has(asked) || ASKING_OBJECTS.has(object.name)) asks.push(asked);
      }
      if (LOCAL_TIME.test(name)) asks.push(name);
    },
  });
  visitor.visit(program);
  return { takes, asks };
}

function resolved(path: string, from: string): string {
  if (!from.startsWith('.')) return packageName(from);
  const target = posix.normalize(posix.join(dirname(path), from));
  if (!existsSync(join(ROOT, target))) throw new Error(`${path} takes from ${target}, which is not there`);
  return target;
}

/** `@scope/name/deep/file` → `@scope/name` */
function packageName(from: string): string {
  return from
    .split('/')
    .slice(0, from.startsWith('@') ? 2 : 1)
    .join('/');
}

/** The first ring of files that take from one another, or null where there is none. */
export function findRing(sources: readonly Source[]): readonly string[] | null {
  const byPath = new Map(sources.map((source) => [source.path, source]));
  const done = new Set<string>();
  const onWay: string[] = [];
  const visit = (path: string): readonly string[] | null => {
    if (done.has(path)) return null;
    if (onWay.includes(path)) return [...onWay.slice(onWay.indexOf(path)), path];
    onWay.push(path);
    for (const { from } of byPath.get(path)?.takes ?? []) {
      const ring = byPath.has(from) ? visit(from) : null;
      if (ring) return ring;
    }
    onWay.pop();
    done.add(path);
    return null;
  };
  for (const { path } of sources) {
    const ring = visit(path);
    if (ring) return ring;
  }
  return null;
}

/** The folder under `renderer/` (or `electron`) a file lives in; files beside the folders are `the page itself`. */
export function homeOf(path: string): string {
  const [top = '', folder = ''] = relative('.', path).split('/');
  if (top !== 'renderer') return top;
  return folder.includes('.') ? 'the page itself' : folder;
}
