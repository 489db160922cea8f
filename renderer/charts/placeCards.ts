import type { DrawnPoint } from './courtFrame.ts';

/** A width and a height, in the drawing's unit. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room between a card and anything else, as a share of the card's height. */
const GAP = 0.17;
/** A card lies beside its point, or so many gaps further away. */
const FURTHER = [0, 2, 4, 7];
/** Where along the edges of a card its point may stand: middle, quarters, ends. */
const ALONG = [0, -0.5, 0.5, -1, 1];
const SIDES: readonly (readonly [right: number, down: number])[] = [
  ...ALONG.map((x) => [x, -1] as const),
  ...ALONG.map((x) => [x, 1] as const),
  ...ALONG.slice(0, 3).flatMap((y) => [[-1, y] as const, [1, y] as const]),
];
/** Another point is further from a card than its own by this factor, so that the eye is not in doubt. */
const CLEARLY = 1.3;
/** Cards start at different choices: where one start ends in a jam, another may not. */
const STARTS = [0, 0.25, 0.5, 0.75];
/** A good place beats a free far one. */
const STEP_COST = 0.004;
const MOST_PASSES = 12;
/** Cards that would cover more of the frame than this leave no room to move. */
const FULL = 0.5;

/** A place for a card: its centre, and where the leader from its point meets it. */
interface Choice {
  readonly centre: DrawnPoint;
  readonly end: DrawnPoint;
  readonly point: DrawnPoint;
}

/**
 * Finds a place near each point for a card of one size. No card lies on another, on a point, or nearer to another point
 * than to its own, and no leader from a point to its card runs under another card: nobody can mistake whose card it is.
 *
 * @returns the centre of each card, in the order of the points; null where no room was found for all of them
 */
export function placeCards(points: readonly DrawnPoint[], card: Size, frame: Size): DrawnPoint[] | null {
  if (points.length * card.width * card.height > FULL * frame.width * frame.height) return null;
  const choices = points.map((_, at) => choicesFor(at, points, card, frame));
  if (choices.some(({ length }) => length === 0)) return null;
  for (const start of STARTS) {
    const placed = settled(choices, card, start);
    const free = placed.every((place, at) => inTheWay(at, place, placed, card) === 0);
    if (free) return placed.map(({ centre }) => centre);
  }
  return null;
}

/** Where the leader from a point meets its card. */
export function leaderEnd(point: DrawnPoint, centre: DrawnPoint, card: Size): DrawnPoint {
  const within = (value: number, middle: number, size: number) =>
    Math.min(Math.max(value, middle - size / 2), middle + size / 2);
  return { x: within(point.x, centre.x, card.width), y: within(point.y, centre.y, card.height) };
}

/** The places that keep clear of all points, the nearest first. */
function choicesFor(at: number, points: readonly DrawnPoint[], card: Size, frame: Size): Choice[] {
  const point = points[at];
  if (!point) return [];
  const gap = card.height * GAP;
  const others = points.filter((_, other) => other !== at);
  return FURTHER.flatMap((further) =>
    SIDES.flatMap(([right, down]): Choice[] => {
      const away = gap * (1 + further);
      const x = point.x + right * (card.width / 2 + (Math.abs(right) === 1 ? away : 0));
      const y = point.y + down * (card.height / 2 + (Math.abs(down) === 1 ? away : 0));
      const centre = {
        x: inside(x, card.width, frame.width, gap),
        y: inside(y, card.height, frame.height, gap),
      };
      const end = leaderEnd(point, centre, card);
      const far = distance(point, end);
      const nearest = Math.min(...others.map((other) => distance(other, leaderEnd(other, centre, card))));
      const clear = far >= gap / 2 && nearest >= Math.max(gap / 2, CLEARLY * far);
      return clear ? [{ centre, end, point }] : [];
    }),
  );
}

function inside(at: number, size: number, all: number, edge: number): number {
  const least = Math.min(size / 2 + edge, all / 2);
  return Math.min(Math.max(at, least), all - least);
}

function distance(a: DrawnPoint, b: DrawnPoint): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** One after the other, each card moves to where it is least in the way, until none wants to. */
function settled(choices: readonly (readonly Choice[])[], card: Size, start: number): Choice[] {
  const placed = choices.flatMap((places) => places[Math.floor(start * places.length)] ?? []);
  for (let pass = 0; pass < MOST_PASSES; pass += 1) {
    let moved = false;
    for (const [at, places] of choices.entries()) {
      const costs = places.map((place, rank) => inTheWay(at, place, placed, card) + rank * STEP_COST);
      const best = places[costs.indexOf(Math.min(...costs))];
      if (!best || best === placed[at]) continue;
      placed[at] = best;
      moved = true;
    }
    if (!moved) break;
  }
  return placed;
}

/** How much a card here is in the way of the others: 0 where it is not. */
function inTheWay(at: number, { centre, end, point }: Choice, placed: readonly Choice[], card: Size): number {
  const gap = card.height * GAP;
  let wrong = 0;
  for (const [other, that] of placed.entries()) {
    if (other === at) continue;
    const wide = 1 - Math.abs(centre.x - that.centre.x) / (card.width + gap / 2);
    const high = 1 - Math.abs(centre.y - that.centre.y) / (card.height + gap / 2);
    if (wide > 0 && high > 0) wrong += 1 + wide * high;
    else if (crosses(point, end, that.centre, card) || crosses(that.point, that.end, centre, card))
      wrong += 1;
  }
  return wrong;
}

/** Whether a leader runs under a card. Leaders are short: a few places along it tell. */
function crosses(from: DrawnPoint, to: DrawnPoint, centre: DrawnPoint, card: Size): boolean {
  return [0.25, 0.5, 0.75, 1].some(
    (share) =>
      Math.abs(from.x + share * (to.x - from.x) - centre.x) < card.width / 2 &&
      Math.abs(from.y + share * (to.y - from.y) - centre.y) < card.height / 2,
  );
}
