import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';

import type { Answer, StorageFailure } from '../../renderer/storage/messages.ts';
import { OpfsLog } from '../../renderer/storage/opfsLog.ts';
import { present } from '../../renderer/basics/invariant.ts';
import { someShots } from '../tools/events.ts';
import { FakeLocks, fakeHost, type FakeWorker } from './fakeHost.ts';

/* What the log does when things go wrong at an unlucky moment. What it does in a browser is tested in a browser. */

const EMPTY: Answer = {
  ask: 'open',
  rows: new TextEncoder().encode('[]'),
  footing: { locking: 'exclusive', journal: 'wal', synchronous: 2 },
};
const SHOTS = someShots(1);
const failing = (failure: StorageFailure): unknown =>
  expect.objectContaining({ name: 'StorageError', failure });

function newWindow(locks: FakeLocks): {
  log: OpfsLog;
  host: ReturnType<typeof fakeHost>;
  lost: Error[];
  worker: () => FakeWorker;
} {
  const host = fakeHost(locks);
  const log = new OpfsLog(host);
  const lost: Error[] = [];
  log.onLost((error) => lost.push(error));
  return { log, host, lost, worker: () => present(host.workers.at(-1), 'the worker') };
}

let locks: FakeLocks;
let one: ReturnType<typeof newWindow>;
beforeEach(() => {
  locks = new FakeLocks();
  one = newWindow(locks);
});
afterEach(() => vi.useRealTimers());

async function openOne(): Promise<void> {
  const opened = one.log.open(false);
  await vi.waitUntil(() => one.worker().asked.length === 1);
  await one.worker().answer(EMPTY);
  await opened;
}

describe('the log', () => {
  test('starts its worker at once, and asks it nothing before it owns the log', async () => {
    expect(one.host.workers).toHaveLength(1);
    await expect(one.log.append(SHOTS)).rejects.toEqual(failing('broken'));
    expect(one.worker().asked).toEqual([]);
  });

  test('tells everyone who waits that the worker broke, and starts another one', async () => {
    await openOne();
    const appended = one.log.append(SHOTS);
    one.worker().break('out of memory');
    await expect(appended).rejects.toEqual(failing('broken'));
    await expect(one.log.append(SHOTS)).rejects.toThrow('out of memory');
    expect(one.lost).toEqual([failing('broken')]);
    expect(one.worker().terminated).toBe(true);
    await vi.waitUntil(() => !locks.held);
    await openOne();
    expect(one.host.workers).toHaveLength(2);
  });

  test('lets go where opening fails, and can be opened again', async () => {
    const refused = one.log.open(false);
    await one.worker().refuse('open', 'damaged', 'a page is missing');
    await one.worker().answer({ ask: 'close' });
    await expect(refused).rejects.toEqual(failing('damaged'));
    expect(locks.held).toBe(false);
    expect(one.worker().terminated).toBe(true);
    expect(one.lost).toEqual([]);
    await openOne();
  });

  test('passes a failed append on, and goes on', async () => {
    await openOne();
    const appended = one.log.append(SHOTS);
    await one.worker().refuse('append', 'full', 'no room');
    await expect(appended).rejects.toEqual(failing('full'));
    const again = one.log.append(SHOTS);
    await one.worker().answer({ ask: 'append', last: 1 });
    await again;
    expect(one.lost).toEqual([]);
  });

  test('asks the browser once to keep the log, after the first event is durable', async () => {
    await openOne();
    for (const last of [1, 2]) {
      expect(one.host.asks).toHaveLength(last - 1 && 1);
      const appended = one.log.append(SHOTS);
      await one.worker().answer({ ask: 'append', last });
      await appended;
      expect(one.host.asks).toHaveLength(1);
    }
  });

  test('says that there is no storage where the browser keeps no locks', async () => {
    const log = new OpfsLog({ ...fakeHost(), locks: undefined });
    await expect(log.open(false)).rejects.toEqual(failing('no-storage'));
  });
});

describe('two windows', () => {
  test('what was asked before the log was taken is still answered', async () => {
    await openOne();
    const appended = one.log.append(SHOTS);
    const two = newWindow(locks);
    void two.log.open(true);
    await one.worker().question('close');
    await expect(one.log.append(SHOTS)).rejects.toEqual(failing('taken-over'));
    await one.worker().answer({ ask: 'append', last: 1 });
    await appended;
    await one.worker().answer({ ask: 'close' });
    await vi.waitUntil(() => one.worker().terminated);
    expect(one.lost).toEqual([failing('taken-over')]);
  });

  test('a worker that does not close is stopped, and whoever waits is told', async () => {
    await openOne();
    vi.useFakeTimers();
    const appended = one.log.append(SHOTS);
    const outcome = appended.catch((error: unknown) => error);
    void newWindow(locks).log.open(true);
    await one.worker().question('close');
    await vi.advanceTimersByTimeAsync(1000);
    expect(one.worker().terminated).toBe(true);
    expect(await outcome).toEqual(failing('taken-over'));
  });

  test('a log taken while it is being opened is not opened', async () => {
    const opened = one.log.open(false);
    await one.worker().question('open');
    void newWindow(locks).log.open(true);
    await one.worker().question('close');
    await one.worker().answer(EMPTY);
    await one.worker().answer({ ask: 'close' });
    await expect(opened).rejects.toEqual(failing('taken-over'));
  });

  test('a second window that was refused keeps its worker for the next try', async () => {
    await openOne();
    const two = newWindow(locks);
    await expect(two.log.open(false)).rejects.toEqual(failing('second-window'));
    const opened = two.log.open(true);
    await two.worker().answer(EMPTY);
    await opened;
    expect(two.host.workers).toHaveLength(1);
  });

  test('a log taken back at once stays with who took it back', async () => {
    await openOne();
    void newWindow(locks).log.open(true);
    const old = one.worker();
    await old.question('close');

    const opened = one.log.open(true);
    await vi.waitUntil(() => one.worker() !== old);
    await one.worker().answer(EMPTY);
    await opened;
    await old.answer({ ask: 'close' });
    await vi.waitUntil(() => old.terminated);

    expect(locks.held).toBe(true);
    await expect(newWindow(locks).log.open(false)).rejects.toEqual(failing('second-window'));
    const appended = one.log.append(SHOTS);
    await one.worker().answer({ ask: 'append', last: 1 });
    await appended;
  });
});
