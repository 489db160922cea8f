/** A fault in the program itself, never in what a person typed. */
export class InvariantError extends Error {
  override readonly name = 'InvariantError';
}

/** Throws {@link InvariantError} unless `holds`. `what` says what should have been true. */
export function invariant(holds: unknown, what: string): asserts holds {
  if (!holds) throw new InvariantError(what);
}

/** For the `default` of a closed union: the compiler proves it is never reached. */
export function assertNever(value: never): never {
  throw new InvariantError(`Unexpected value: ${JSON.stringify(value)}`);
}

/** The value, or {@link InvariantError} where it is missing. */
export function present<T>(value: T | null | undefined, what: string): T {
  invariant(value !== null && value !== undefined, `${what} is missing`);
  return value;
}
