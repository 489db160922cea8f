/*
 * Work on things that never change need not be done twice. What it came to is kept as long as the things themselves, and
 * no longer; it is handed out again and again, so nobody may write in it.
 */

/** The same work, done once for each object. */
export function oncePer<K extends object, T>(work: (one: K) => T): (one: K) => T {
  const done = new WeakMap<K, T>();
  return (one) => {
    const known = done.get(one);
    if (known !== undefined) return known;
    const result = work(one);
    done.set(one, result);
    return result;
  };
}

/**
 * The same work on lists, done again only where another object stands in the list, or in another place. Of lists that
 * begin with the same object only the latest is remembered.
 */
export function oncePerList<K extends object, T>(work: (list: readonly K[]) => T): (list: readonly K[]) => T {
  const done = new WeakMap<K, { readonly list: readonly K[]; readonly result: T }>();
  return (list) => {
    const [first] = list;
    if (first === undefined) return work(list);
    const known = done.get(first);
    if (known && sameObjects(known.list, list)) return known.result;
    const result = work(list);
    // A copy: the list itself may be written in later.
    done.set(first, { list: [...list], result });
    return result;
  };
}

function sameObjects<K>(a: readonly K[], b: readonly K[]): boolean {
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at += 1) if (a[at] !== b[at]) return false;
  return true;
}
