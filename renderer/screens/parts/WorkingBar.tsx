import { useEffect, useState } from 'react';

import type { Probability, Seconds } from '../../basics/units.ts';
import { useStudy } from '../gymContext.ts';
import { tellIfLasting } from './lasting.ts';

/** What is done sooner is not worth a word. */
export const WORTH_A_WORD: Seconds = 0.5;

/**
 * Says that the drop is being worked out anew, once that has lasted a while. The last in a panel: it lies over the
 * panel's lower edge, so that nothing jumps.
 */
export function WorkingBar() {
  const share = useStudy(({ working }) => working);
  const lasting = useLasting(share !== null);
  return lasting && share !== null ? <Working share={share} /> : null;
}

/** How far the work is. */
export function Working({ share }: { readonly share: Probability }) {
  return (
    <div className="working">
      <span>Working the numbers out anew …</span>
      <progress aria-label="Working the numbers out anew" max={1} value={share} />
    </div>
  );
}

function useLasting(on: boolean): boolean {
  const [lasting, setLasting] = useState(false);
  useEffect(() => {
    if (!on) return undefined;
    return tellIfLasting(WORTH_A_WORD, setLasting);
  }, [on]);
  return lasting;
}
