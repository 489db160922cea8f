import { describe, expect, it } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import type { Reply, Said } from '../../renderer/fitting/messages.ts';
import { WorkerFitting } from '../../renderer/fitting/workerFitting.ts';
import { PLAIN, play } from '../bench/modelWorld.ts';

const { rounds } = play({ ...PLAIN, weeks: 8 }, rngFromSeed(9));
const [{ shooter } = { shooter: '' }] = rounds;
const ASK = { shooter, mix: 'relaxed', pressure: null, hyper: null } as const;

/** A worker that keeps what it is sent and says what the test tells it to. */
class FakeWorker extends EventTarget {
  readonly heard: Said[] = [];
  terminated = false;
  postMessage(said: Said): void {
    this.heard.push(said);
  }
  terminate(): void {
    this.terminated = true;
  }
  say(data: Reply): void {
    this.dispatchEvent(new MessageEvent('message', { data }));
  }
  break(): void {
    this.dispatchEvent(new Event('error'));
  }
}

function fitting() {
  const workers: FakeWorker[] = [];
  let breaths = 0;
  const made = new WorkerFitting({
    startWorker: () => {
      const worker = new FakeWorker();
      workers.push(worker);
      return worker as unknown as Worker;
    },
    breathe: () => {
      breaths += 1;
      return Promise.resolve();
    },
  });
  return {
    fitting: made,
    workers,
    breaths: () => breaths,
    settle: () => new Promise((resolve) => setImmediate(resolve)),
  };
}

describe('the fitting worker from the page', () => {
  it('is not started before the first question', async () => {
    const { fitting: made, workers, settle } = fitting();
    made.tell(shooter, rounds, []);
    made.rest();
    await settle();
    expect(workers).toEqual([]);
  });

  it('is told everything in pieces, with a breath between, before it is asked', async () => {
    const { fitting: made, workers, settle, breaths } = fitting();
    made.tell(shooter, rounds, []);
    void made.study(ASK, () => undefined);
    await settle();
    const heard = workers[0]?.heard ?? [];
    const told = heard.flatMap((said) => (said.say === 'news' ? [said.changed.length] : []));
    expect(told.reduce((sum, one) => sum + one, 0)).toBe(rounds.length);
    expect(Math.max(...told)).toBe(100);
    expect(breaths()).toBeGreaterThanOrEqual(2);
    expect(heard.at(-1)).toMatchObject({ say: 'ask', number: 1 });
  });

  it('hands over answers, progress and failures to whoever asked', async () => {
    const { fitting: made, workers } = fitting();
    const shares: number[] = [];
    const first = made.study(ASK, (share) => void shares.push(share));
    const second = made.forecasts(shooter);
    const [worker] = workers;
    worker?.say({ number: 1, is: 'progress', share: 0.5 });
    worker?.say({ number: 2, is: 'failure', detail: 'no luck' });
    worker?.say({ number: 1, is: 'answer', answer: { ask: 'study', content: null } });
    await expect(second).rejects.toThrow('no luck');
    await expect(first).resolves.toBeNull();
    expect(shares).toEqual([0.5]);
  });

  it('breaks where something cannot be sent, instead of waiting for ever', async () => {
    const { fitting: made, workers, settle } = fitting();
    const lost = made.study(ASK, () => undefined);
    const [worker] = workers;
    if (!worker) throw new Error('no worker');
    worker.postMessage = () => {
      throw new Error('cannot be cloned');
    };
    await expect(lost).rejects.toThrow('cannot be cloned');
    void made.study(ASK, () => undefined);
    await settle();
    expect(workers[1]?.heard.at(-1)).toMatchObject({ say: 'ask', number: 2 });
  });

  it('starts another worker after one that broke, and tells it the whole record as it now is', async () => {
    const { fitting: made, workers, settle } = fitting();
    const [gone, ...left] = rounds;
    made.tell(shooter, rounds, []);
    const lost = made.study(ASK, () => undefined);
    made.tell(shooter, [], [gone?.id ?? '']);
    await settle();
    workers[0]?.break();
    await expect(lost).rejects.toThrow('broke');
    expect(workers[0]?.terminated).toBe(true);
    void made.study(ASK, () => undefined);
    await settle();
    const ids = (workers[1]?.heard ?? []).flatMap((said) =>
      said.say === 'news' ? said.changed.map(({ id }) => id) : [],
    );
    expect(ids).toEqual(left.map(({ id }) => id));
  });
});
