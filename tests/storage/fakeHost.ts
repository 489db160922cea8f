import type { Answer, Numbered, Question, Reply } from '../../renderer/storage/messages.ts';
import type { LogHost } from '../../renderer/storage/opfsLog.ts';

/** A storage worker that answers only what a test lets it answer. */
export class FakeWorker extends EventTarget {
  readonly asked: Numbered<Question>[] = [];
  terminated = false;

  postMessage(question: Numbered<Question>): void {
    this.asked.push(question);
  }

  terminate(): void {
    this.terminated = true;
  }

  /** Waits until the question has come in, and answers it. */
  async answer(content: Answer): Promise<void> {
    const { number } = await this.question(content.ask);
    this.#reply({ number, ok: true, content });
  }

  async refuse(ask: Question['ask'], failure: 'full' | 'damaged', detail: string): Promise<void> {
    const { number } = await this.question(ask);
    this.#reply({ number, ok: false, failure, detail });
  }

  break(message: string): void {
    this.dispatchEvent(Object.assign(new Event('error', { cancelable: true }), { message }));
  }

  /** The latest question of a kind, once it has come in. */
  async question(ask: Question['ask']): Promise<Numbered<Question>> {
    for (let turn = 0; turn < 50; turn += 1) {
      const found = this.asked.findLast(({ content }) => content.ask === ask);
      if (found) return found;
      await Promise.resolve();
    }
    throw new Error(`Nobody asked to ${ask}.`);
  }

  #reply(data: Reply): void {
    this.dispatchEvent(Object.assign(new Event('message'), { data }));
  }
}

/** Locks as one browser keeps them for all its windows; only as much as the log uses. */
export class FakeLocks {
  #holder: ((stolen: Error) => void) | null = null;

  get held(): boolean {
    return this.#holder !== null;
  }

  async request(_: string, wish: LockOptions, work: () => Promise<void>): Promise<void> {
    if (this.#holder && !wish.steal) throw new DOMException('waited long enough', 'TimeoutError');
    this.#holder?.(new DOMException('stolen', 'AbortError'));
    const stolen = new Promise<never>((_resolve, reject) => {
      this.#holder = reject;
    });
    const holder = this.#holder;
    try {
      await Promise.race([work(), stolen]);
    } finally {
      if (this.#holder === holder) this.#holder = null;
    }
  }
}

/** A window's browser with workers to be answered by hand; windows that share `locks` are windows of one browser. */
export function fakeHost(locks = new FakeLocks()): LogHost & { workers: FakeWorker[]; asks: number[] } {
  const workers: FakeWorker[] = [];
  const asks: number[] = [];
  return {
    workers,
    asks,
    locks: locks as unknown as LockManager,
    startWorker: () => {
      const worker = new FakeWorker();
      workers.push(worker);
      return worker as unknown as Worker;
    },
    askToKeep: () => Promise.resolve(asks.push(asks.length)),
  };
}
