import { useEffect, useState } from 'react';

/** A finger on its way to a button that was there a moment ago must not press what has taken its place. */
const SETTLE_MS = 900;

/** False until what is shown has stood long enough to be seen. */
export function useSettled(): boolean {
  const [settled, setSettled] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(true), SETTLE_MS);
    return () => clearTimeout(timer);
  }, []);
  return settled;
}
