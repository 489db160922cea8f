/** `Ada`, `Ada and Ben`, `Ada, Ben and Kim` */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  const before = words.slice(0, -1);
  return before.length === 0 ? last : `${before.join(', ')} and ${last}`;
}
