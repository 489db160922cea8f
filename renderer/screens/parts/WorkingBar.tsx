import { useEffect, useState } from 'react';

import type { Probability, Seconds } from '../../basics/units.ts';
import { useStudy } from '../gymContext.ts';

/** What is done sooner is not worth a word. */
const WORTH_A_WORD: Seconds = 0.5;

/** Says that the drop is being worked out anew, once that has lasted a while. Its place is kept, so that nothing jumps. */
export function WorkingBar() {
  const share = useStudy(({ working }) => working);
  const lasting = useLasting(share !== null);
  return <div className="working">{lasting && share !== null ? <Working share={share} /> : null}</div>;
}

/** How far the work is. */
export function Working({ share }: { readonly share: Probability }) {
  return (
    <>
      <span className="quiet">Working the numbers out anew …</span>
      <progress aria-label="Working the numbers out anew" max={1} value={share} />
    </>
  );
}

function useLasting(on: boolean): boolean {
  const [lasting, setLasting] = useState(false);
  useEffect(() => {
    if (!on) return undefined;
    const timer = setTimeout(() => setLasting(true), 1000 * WORTH_A_WORD);
    return () => {
      clearTimeout(timer);
      setLasting(false);
    };
  }, [on]);
  return lasting;
}
