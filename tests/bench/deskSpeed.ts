import { Desk } from '../../renderer/fitting/desk.ts';
import type { Question, Reply } from '../../renderer/fitting/messages.ts';
import { present } from '../../renderer/basics/invariant.ts';
import type { Round } from '../../renderer/log/book.ts';
import type { Spreads } from '../../renderer/stats/model/priors.ts';
import { running } from './threadTime.ts';

/*
 * What the fitting worker does after a round, whole: told of one round more, asked for a quick study, until its answer is
 * there. In seconds that its thread was running (threadTime.ts): what else the machine does is not its cost.
 */

export interface OnDesk {
  /** The thorough study after all was told, and another one after one more round. */
  readonly first: number;
  readonly thorough: number;
  /** The least of {@link REPEATS} quick studies, each after one more round, and their median. */
  readonly quick: number;
  readonly usual: number;
  /** The longest stretch in which the thorough study heard nothing. */
  readonly deaf: number;
}

export const REPEATS = 7;

/** @param pieces the record, in the pieces in which it comes to the worker */
export function tellDesk(pieces: Iterable<readonly Round[]>): Told {
  const ears = new Ears();
  return { ears, latest: ears.tell(pieces) };
}

/** Asks a desk that was told of a record. */
export async function onDesk({ ears, latest }: Told): Promise<OnDesk> {
  const [last, ...again] = latest.toReversed();
  if (!last) throw new Error('a record without a round');
  const first = await ears.study(last.shooter, null);
  // Corrected rounds of the latest sessions weigh the same as new ones, and the record stays as long as it is.
  ears.tell([[corrected(last)]]);
  const thorough = await ears.study(last.shooter, null);
  const quick: number[] = [];
  for (const round of again.slice(0, REPEATS)) {
    ears.tell([[corrected(round)]]);
    // oxlint-disable-next-line no-await-in-loop
    quick.push((await ears.study(last.shooter, thorough.hyper)).seconds);
  }
  quick.sort((a, b) => a - b);
  return {
    first: first.seconds,
    thorough: thorough.seconds,
    quick: quick[0] ?? NaN,
    usual: quick[Math.floor(REPEATS / 2)] ?? NaN,
    deaf: thorough.deaf,
  };
}

function corrected(round: Round): Round {
  return structuredClone({ ...round, note: 'One more' });
}

interface Told {
  readonly ears: Ears;
  readonly latest: readonly Round[];
}

/** A desk with whoever talks to it. */
class Ears {
  readonly #desk: Desk;
  #deaf = 0;
  #heard = 0;
  #asked = 0;
  #answer: (reply: Reply) => void = () => undefined;

  constructor() {
    this.#desk = new Desk({
      reply: (reply) => {
        if (reply.is !== 'progress') this.#answer(reply);
      },
      now: () => performance.now() / 1000,
      breathe: () => {
        this.#hear();
        return new Promise((resolve) => void setImmediate(resolve));
      },
    });
  }

  /** @returns the latest of them, enough for every study that follows */
  tell(pieces: Iterable<readonly Round[]>): Round[] {
    let latest: Round[] = [];
    for (const changed of pieces) {
      const [first] = changed;
      if (first) this.#desk.hear({ say: 'news', shooter: first.shooter, changed, gone: [] });
      latest = [...latest, ...changed].slice(-REPEATS - 1);
    }
    return latest;
  }

  async study(
    shooter: string,
    hyper: Spreads | null,
  ): Promise<{ seconds: number; deaf: number; hyper: Spreads }> {
    this.#asked += 1;
    const question: Question = { ask: 'study', of: { shooter, mix: 'relaxed', pressure: null, hyper } };
    const answer = new Promise<Reply>((resolve) => {
      this.#answer = resolve;
    });
    const start = running();
    this.#deaf = 0;
    this.#heard = start;
    this.#desk.hear({ say: 'ask', number: this.#asked, question });
    const reply = await answer;
    this.#hear();
    if (reply.is !== 'answer' || reply.answer.ask !== 'study') throw new Error('no study');
    const index = present(reply.answer.content, 'a study').index;
    if (index.kind === 'none') throw new Error(index.reason);
    return { seconds: running() - start, deaf: this.#deaf, hyper: index.hyper.mean };
  }

  #hear(): void {
    const now = running();
    this.#deaf = Math.max(this.#deaf, now - this.#heard);
    this.#heard = now;
  }
}
