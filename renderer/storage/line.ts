import { StorageError, type AnswerTo, type Numbered, type Question, type Reply } from './messages.ts';

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: StorageError) => void;
}

/** How long a worker may take to close the database before it is stopped. */
const CLOSING_MS = 1000;

/** The line to one storage worker: each question gets its own answer, or the error the line ended with. */
export class WorkerLine {
  readonly #worker: Worker;
  readonly #waiting = new Map<number, Waiting>();
  #asked = 0;
  #ended: StorageError | null = null;

  /** @param onBroken called once, where the worker broke; never after `end` or `hangUp` */
  constructor(worker: Worker, onBroken: (error: StorageError) => void) {
    this.#worker = worker;
    worker.addEventListener('message', ({ data }: MessageEvent<Reply>) => this.#settle(data));
    const broke = (event: Event): void => {
      event.preventDefault();
      if (this.#ended) return;
      const error = new StorageError('broken', `the storage worker broke: ${wordsOf(event)}`);
      this.end(error);
      onBroken(error);
    };
    worker.addEventListener('error', broke);
    worker.addEventListener('messageerror', broke);
  }

  /** True where no more questions are taken. */
  get ended(): boolean {
    return this.#ended !== null;
  }

  ask<Q extends Question>(question: Q): Promise<AnswerTo<Q>> {
    if (this.#ended) return Promise.reject(this.#ended);
    this.#asked += 1;
    const message: Numbered<Question> = { number: this.#asked, content: question };
    return new Promise<AnswerTo<Q>>((resolve, reject) => {
      this.#waiting.set(message.number, { resolve, reject });
      this.#worker.postMessage(message);
    });
  }

  /** Stops the worker now. Whoever still waits is told `why`, and so is everyone who asks later. */
  end(why: StorageError): void {
    this.#ended ??= why;
    this.#worker.terminate();
    for (const { reject } of this.#waiting.values()) reject(this.#ended);
    this.#waiting.clear();
  }

  /** Takes no more questions, lets the worker answer those it has and close the database, then stops it. */
  async hangUp(why: StorageError): Promise<void> {
    if (this.#ended) return;
    const closing = this.ask({ ask: 'close' }).catch(() => undefined);
    this.#ended = why;
    await Promise.race([closing, new Promise((resolve) => setTimeout(resolve, CLOSING_MS))]);
    this.end(why);
  }

  #settle(reply: Reply): void {
    const waiting = this.#waiting.get(reply.number);
    this.#waiting.delete(reply.number);
    if (reply.ok) waiting?.resolve(reply.content as never);
    else waiting?.reject(new StorageError(reply.failure, reply.detail));
  }
}

function wordsOf(event: Event): string {
  return 'message' in event && typeof event.message === 'string' && event.message
    ? event.message
    : event.type;
}
