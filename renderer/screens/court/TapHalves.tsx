import type { MouseEvent, PointerEvent } from 'react';

import type { MissSide } from '../../log/events.ts';
import type { Round } from '../../log/book.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { MISS_SIDE_WORDS } from '../parts/missSideWords.ts';
import { useOneAtATime } from './useOneAtATime.ts';

/** As they lie around the rim, from the far edge to the near one. */
const SIDES = ['long', 'left', 'right', 'short'] as const satisfies MissSide[];

/** Miss on the left half, make on the right. The tap counts when the finger goes down. */
export function TapHalves({ round }: { readonly round: Round }) {
  const { court } = useDoors();
  const sides = useGym((state) => state.settings.missSides);
  const once = useOneAtATime();
  const tap = (made: boolean, side: MissSide | null) => ({
    onPointerDown: (touch: PointerEvent) => {
      if (touch.button === 0) once(touch.timeStamp, () => court.shot(made, side));
    },
    // Enter and space on the button; a touch was taken already when the finger went down.
    onClick: (click: MouseEvent) => {
      if (click.detail === 0) court.shot(made, side);
    },
  });
  return (
    <div className="halves" key={round.id}>
      <div className={sides ? 'half-miss with-sides' : 'half-miss'}>
        <button type="button" className="tap miss" {...tap(false, null)}>
          <span className="tap-sign ring" aria-hidden="true" />
          Miss
        </button>
        {sides
          ? SIDES.map((side) => (
              <button key={side} type="button" className={`tap side ${side}`} {...tap(false, side)}>
                <span className="unseen">Miss </span>
                {MISS_SIDE_WORDS[side]}
              </button>
            ))
          : null}
      </div>
      <button type="button" className="tap make" {...tap(true, null)}>
        <span className="tap-sign disc" aria-hidden="true" />
        Make
      </button>
    </div>
  );
}
