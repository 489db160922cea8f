/** Work that is done the first time it is asked for, and remembered. */
export class Once<T> {
  readonly #work: () => Promise<T>;
  #done: Promise<T> | null = null;

  constructor(work: () => Promise<T>) {
    this.#work = work;
  }

  get(): Promise<T> {
    this.#done ??= this.#work();
    return this.#done;
  }

  /** Null where nobody has asked for it. */
  get done(): Promise<T> | null {
    return this.#done;
  }
}
