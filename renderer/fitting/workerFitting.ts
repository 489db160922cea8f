import { asError } from '../basics/errors.ts';
import type { RoundId, ShooterId } from '../basics/ids.ts';
import type { Probability } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import type { ForecastScore } from '../stats/forecastScore.ts';
import type { Change } from '../stats/model/chokeIndex.ts';
import type { Study } from '../stats/study.ts';
import type { ChangeAsk, StudyAsk } from '../stats/studyAsk.ts';
import type { WhatHangs } from '../store/whatHangs.ts';
import type { Answer, News, Question, Reply, Said } from './messages.ts';

/** What the fitting needs of the browser. */
export interface FittingHost {
  readonly startWorker: () => Worker;
  /** Lets the page draw and hear taps. */
  readonly breathe: () => Promise<void>;
}

/** The browser this page runs in. */
export const FITTING_HOST: FittingHost = {
  startWorker: () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'fitting' }),
  breathe: () => new Promise((resolve) => setTimeout(resolve)),
};

/** So many rounds travel at once: a copy of them takes the page a few milliseconds. */
const AT_ONCE = 100;

interface Waiting {
  readonly progress: (share: Probability) => void;
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
}

/**
 * The drop model in a worker. What is said to it goes out in order, long news in pieces. A worker that breaks rejects
 * what is under way; the next question starts another and tells it everything again.
 */
export class WorkerFitting {
  readonly #host: FittingHost;
  readonly #records = new Map<ShooterId, Map<RoundId, Round>>();
  readonly #waiting = new Map<number, Waiting>();
  #worker: Worker | null = null;
  #line: Promise<void> = Promise.resolve();
  #asked = 0;

  constructor(host: FittingHost = FITTING_HOST) {
    this.#host = host;
  }

  tell(shooter: ShooterId, changed: readonly Round[], gone: readonly RoundId[]): void {
    const record = this.#records.get(shooter) ?? new Map<RoundId, Round>();
    this.#records.set(shooter, record);
    for (const round of changed) record.set(round.id, round);
    for (const id of gone) record.delete(id);
    if (this.#worker) this.#send({ say: 'news', shooter, changed, gone });
  }

  study(of: StudyAsk, progress: (share: Probability) => void): Promise<Study | null> {
    return this.#ask({ ask: 'study', of }, progress);
  }

  forecasts(shooter: ShooterId): Promise<ForecastScore | null> {
    return this.#ask({ ask: 'forecasts', shooter });
  }

  hangs(shooter: ShooterId): Promise<WhatHangs | null> {
    return this.#ask({ ask: 'hangs', shooter });
  }

  change(of: ChangeAsk): Promise<Change | null> {
    return this.#ask({ ask: 'change', of });
  }

  rest(): void {
    if (this.#worker) this.#send({ say: 'rest' });
  }

  #ask<Q extends Question>(
    question: Q,
    progress: Waiting['progress'] = () => undefined,
  ): Promise<Extract<Answer, { ask: Q['ask'] }>['content']> {
    this.#worker ??= this.#start();
    this.#asked += 1;
    const number = this.#asked;
    return new Promise((resolve, reject) => {
      this.#waiting.set(number, { progress, resolve, reject });
      this.#send({ say: 'ask', number, question });
    });
  }

  #start(): Worker {
    const worker = this.#host.startWorker();
    worker.addEventListener('message', ({ data }: MessageEvent<Reply>) => this.#hear(data));
    const broke = (event: Event): void => {
      event.preventDefault();
      if (worker === this.#worker) this.#break('the fitting worker broke');
    };
    worker.addEventListener('error', broke);
    worker.addEventListener('messageerror', broke);
    this.#worker = worker;
    for (const [shooter, record] of this.#records) {
      this.#send({ say: 'news', shooter, changed: [...record.values()], gone: [] });
    }
    return worker;
  }

  #send(said: Said): void {
    const worker = this.#worker;
    this.#line = this.#line
      .then(() => this.#post(worker, said))
      .catch((error: unknown) => {
        // What cannot be sent is never answered.
        if (worker === this.#worker) this.#break(asError(error).message);
      });
  }

  async #post(worker: Worker | null, said: Said): Promise<void> {
    for (const piece of said.say === 'news' ? pieces(said) : [said]) {
      if (worker !== this.#worker) return;
      worker?.postMessage(piece);
      // oxlint-disable-next-line no-await-in-loop
      if (piece.say === 'news' && piece.changed.length === AT_ONCE) await this.#host.breathe();
    }
  }

  #hear(reply: Reply): void {
    const waiting = this.#waiting.get(reply.number);
    if (reply.is === 'progress') {
      waiting?.progress(reply.share);
      return;
    }
    this.#waiting.delete(reply.number);
    if (reply.is === 'answer') waiting?.resolve(reply.answer.content as never);
    else waiting?.reject(new Error(reply.detail));
  }

  #break(why: string): void {
    this.#worker?.terminate();
    this.#worker = null;
    for (const { reject } of this.#waiting.values()) reject(new Error(why));
    this.#waiting.clear();
  }
}

function pieces({ say, shooter, changed, gone }: News): News[] {
  const news: News[] = [{ say, shooter, changed: changed.slice(0, AT_ONCE), gone }];
  for (let from = AT_ONCE; from < changed.length; from += AT_ONCE) {
    news.push({ say, shooter, changed: changed.slice(from, from + AT_ONCE), gone: [] });
  }
  return news;
}
