import type { Book } from './book.ts';

type Writable<T> =
  T extends ReadonlyMap<infer K, infer V> ? Map<K, V> : T extends ReadonlySet<infer K> ? Set<K> : never;

/** The parts of a book that are maps or sets. */
type Part = {
  [K in keyof Book]: Book[K] extends ReadonlyMap<unknown, unknown> | ReadonlySet<unknown> ? K : never;
}[keyof Book];

/**
 * A book being written. Each map is copied the first time it is touched, so one tap costs the same whether the log
 * holds a week or ten years, and folding a whole log copies each map once.
 */
export class Draft {
  readonly #book: { -readonly [K in keyof Book]: Book[K] };
  readonly #copied = new Set<Part>();

  constructor(book: Book) {
    this.#book = { ...book };
  }

  get book(): Book {
    return this.#book;
  }

  /** The map or set under this name, safe to write in. */
  edit<K extends Part>(part: K): Writable<Book[K]> {
    if (!this.#copied.has(part)) {
      const old = this.#book[part];
      const copy = old instanceof Map ? new Map(old) : new Set(old as ReadonlySet<unknown>);
      this.#book[part] = copy as unknown as Book[K];
      this.#copied.add(part);
    }
    return this.#book[part] as unknown as Writable<Book[K]>;
  }

  setOpen(round: Book['open']): void {
    this.#book.open = round;
  }

  skip(): void {
    this.#book.skipped += 1;
  }
}
