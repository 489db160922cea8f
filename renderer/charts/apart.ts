import type { DrawnPoint } from './courtFrame.ts';
import type { Size } from './placeCards.ts';

const MOST_STEPS = 60;

/**
 * Moves points away from each other, as little as it takes, until discs of a size around them do not touch, as far as
 * there is room; all discs stay inside the frame.
 *
 * @param least how far apart two of them lie, the width of a disc
 */
export function apart(points: readonly DrawnPoint[], least: number, frame: Size): DrawnPoint[] {
  const inside = ({ x, y }: DrawnPoint): DrawnPoint => ({
    x: Math.min(Math.max(x, least / 2), frame.width - least / 2),
    y: Math.min(Math.max(y, least / 2), frame.height - least / 2),
  });
  const moved = points.map(inside);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    let touched = false;
    for (const [at, one] of moved.entries()) {
      for (let to = at + 1; to < moved.length; to += 1) {
        const [here, there] = [moved[at] ?? one, moved[to] ?? one];
        const far = Math.hypot(there.x - here.x, there.y - here.y);
        if (far >= least) continue;
        touched = true;
        // Two on one place part sideways.
        const [right, down] = far === 0 ? [1, 0] : [(there.x - here.x) / far, (there.y - here.y) / far];
        const push = (least - far) / 2 + least / 1000;
        moved[at] = inside({ x: here.x - right * push, y: here.y - down * push });
        moved[to] = inside({ x: there.x + right * push, y: there.y + down * push });
      }
    }
    if (!touched) break;
  }
  return moved;
}
