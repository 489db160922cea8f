import type { Entry, Round } from '../log/book.ts';

/**
 * Makes rounds that came in a message small. There every shot has its own copy of every word, and its id: of five years
 * of single shots two thirds are that, and whatever is worked out has to wait while the engine looks through it for what
 * can be thrown away. Alike cards and words become one, and single entries lose their ids, which nothing here asks for.
 */
export class LeanRounds {
  readonly #cards = new Map<string, Round['stops']>();
  readonly #words = new Map<string, unknown>();

  made(round: Round): Round {
    return {
      ...round,
      shooter: this.#one(round.shooter),
      session: this.#one(round.session),
      date: this.#one(round.date),
      game: this.#one(round.game),
      stops: this.#card(round.stops),
      entries: round.entries.map((entry) => this.#entry(entry)),
    };
  }

  #entry(entry: Entry): Entry {
    const { at, stop } = entry;
    switch (entry.kind) {
      case 'shot':
        return {
          kind: 'shot',
          id: '',
          at,
          stop,
          made: entry.made,
          side: entry.side && this.#one(entry.side),
        };
      case 'count':
        return { kind: 'count', id: '', at, stop, makes: entry.makes, attempts: entry.attempts };
      case 'expired':
        return { kind: 'expired', id: '', at, stop };
    }
  }

  #card(stops: Round['stops']): Round['stops'] {
    const words = JSON.stringify(stops);
    const card = this.#cards.get(words) ?? stops;
    this.#cards.set(words, card);
    return card;
  }

  /** The one copy of a word. */
  #one<Word extends string>(word: Word): Word {
    if (!this.#words.has(word)) this.#words.set(word, word);
    return this.#words.get(word) as Word;
  }
}
