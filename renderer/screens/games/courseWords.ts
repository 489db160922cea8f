import type { CoursePoint } from '../../charts/CourseChart.tsx';
import type { Course } from '../../games/simulateGame.ts';
import type { GamePlan } from '../../pressure/gamePlan.ts';

/* A game that played itself, in words and as points to draw. */

/** The shooter's own shots; in a duel each with the other's answer, since the chance that counts is the one after it. */
export function coursePoints({ steps, won }: Course, plan: GamePlan): CoursePoint[] {
  const own = plan.family === 'duel' ? steps.filter((_, at) => at % 2 === 0) : steps;
  return own.map(({ made, leverage }, at) => ({
    made,
    leverage,
    after: own[at + 1]?.chance ?? (won ? 1 : 0),
  }));
}

/** `Won after 37 shots.` */
export function courseEnd({ won, timeUp }: Course, shots: number): string {
  const after = `after ${shots} ${shots === 1 ? 'shot' : 'shots'}`;
  if (timeUp)
    return won ? `Won: the clock ran out ${after}, and it was enough.` : `Lost: the clock ran out ${after}.`;
  return won ? `Won ${after}.` : `Lost ${after}.`;
}

/** The shot on which most hung; null where none did. */
export function courseTurn(points: readonly CoursePoint[]): string | null {
  const most = points.reduce(
    (best, { leverage }, at) => (leverage > (points[best]?.leverage ?? 0) ? at : best),
    0,
  );
  const point = points[most];
  if (!point || point.leverage < 0.05) return null;
  return `Most hung on shot ${most + 1}, ${point.made ? 'a make' : 'a miss'}: there a make was worth ${Math.round(
    100 * point.leverage,
  )} points of the chance more than a miss.`;
}
