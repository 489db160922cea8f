import type { Database } from '@sqlite.org/sqlite-wasm';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

import { StorageError, type StorageFailure } from '../../renderer/storage/messages.ts';
import { APPLICATION_ID, checkVersion, migrate, MIGRATIONS } from '../../renderer/storage/migrations.ts';
import { loadSqlite } from '../../renderer/storage/sqlite.ts';

const sqlite = await loadSqlite();
const STEPS = ['CREATE TABLE a (x)', 'ALTER TABLE a ADD COLUMN y; CREATE TABLE b (z)'];

let db: Database;
beforeEach(() => {
  db = new sqlite.oo1.DB(':memory:');
});
afterEach(() => db.close());

const tables = (): unknown[] =>
  db.selectValues("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY 1");
const version = (): unknown => db.selectValue('PRAGMA user_version');

function failure(work: () => unknown): StorageFailure | null {
  try {
    work();
    return null;
  } catch (error) {
    if (error instanceof StorageError) return error.failure;
    throw error;
  }
}

describe('migrations', () => {
  test('take an empty file all the way, and mark it as ours', () => {
    migrate(sqlite, db, STEPS);
    expect(tables()).toEqual(['a', 'b']);
    expect(version()).toBe(2);
    expect(db.selectValue('PRAGMA application_id')).toBe(APPLICATION_ID);
  });

  test('take an older file on from where it stands, with what is in it', () => {
    migrate(sqlite, db, STEPS.slice(0, 1));
    db.exec('INSERT INTO a VALUES (7)');
    migrate(sqlite, db, STEPS);
    expect(db.selectObjects('SELECT * FROM a')).toEqual([{ x: 7, y: null }]);
    expect(version()).toBe(2);
  });

  test('do nothing to a file that has taken every step', () => {
    migrate(sqlite, db);
    const before = db.selectValue('PRAGMA schema_version');
    migrate(sqlite, db);
    expect(db.selectValue('PRAGMA schema_version')).toBe(before);
    expect(version()).toBe(MIGRATIONS.length);
  });

  test('take a step wholly or not at all', () => {
    const broken = [...STEPS, 'CREATE TABLE c (x); CREATE TABLE a (x)'];
    expect(() => migrate(sqlite, db, broken)).toThrow('table a already exists');
    expect(tables()).toEqual(['a', 'b']);
    expect(version()).toBe(2);
  });

  test('refuse a file from a later version, and leave it alone', () => {
    migrate(sqlite, db, STEPS);
    const before = sqlite.capi.sqlite3_js_db_export(db);
    expect(failure(() => migrate(sqlite, db, STEPS.slice(0, 1)))).toBe('newer-database');
    expect(sqlite.capi.sqlite3_js_db_export(db)).toEqual(before);
  });

  test.each([
    ['another program’s mark', 'PRAGMA application_id = 252006'],
    ['tables and no mark', 'CREATE TABLE letters (text)'],
    ['a version and no mark', 'PRAGMA user_version = 1'],
  ])('refuse a file with %s', (_, made) => {
    db.exec(made);
    expect(failure(() => checkVersion(db))).toBe('damaged');
  });
});
