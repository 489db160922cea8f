import type { DrawnPoint } from './courtFrame.ts';

/** A width and a height, in the drawing's unit. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room kept between a card and its point, and between a card and the frame, as a share of the card's height. */
const GAP = 0.2;
const EDGE = 0.12;
/** What each step down the list of choices costs, as a share of a card: a good place beats a free far one. */
const STEP = 0.02;
/** What it costs to touch another card at all. */
const TOUCH = 0.3;
const MOST_PASSES = 10;

/** Where a card may lie, as seen from its point, in card widths and heights: first choice first. */
const SIDES: readonly (readonly [number, number])[] = [
  [0, -1],
  [0, 1],
  [-1, 0],
  [1, 0],
  [-0.6, -1],
  [0.6, -1],
  [-0.6, 1],
  [0.6, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
  [0, -2],
  [0, 2],
  [-1, -2],
  [1, -2],
];

/**
 * Finds a place beside each point for a card of one size, so that cards do not lie on each other nor on a point, as
 * far as there is room; all of them stay inside the frame. Every card starts at its first choice; then, one after the
 * other, each moves to where it hides least, until none wants to move.
 *
 * @returns the centre of each card, in the order of the points
 */
export function placeCards(points: readonly DrawnPoint[], card: Size, frame: Size): DrawnPoint[] {
  const choices = points.map((point) => SIDES.map((side) => inside(beside(point, side, card), card, frame)));
  const placed = choices.map(([first], at) => first ?? points[at] ?? { x: 0, y: 0 });
  for (let pass = 0; pass < MOST_PASSES; pass += 1) {
    let moved = false;
    for (const [at, places] of choices.entries()) {
      const others = placed.filter((_, other) => other !== at);
      const costs = places.map((place, rank) => hidden(place, card, others, points) + rank * STEP);
      const best = places[costs.indexOf(Math.min(...costs))];
      if (!best || best === placed[at]) continue;
      placed[at] = best;
      moved = true;
    }
    if (!moved) break;
  }
  return placed;
}

function beside(point: DrawnPoint, [right, down]: readonly [number, number], card: Size): DrawnPoint {
  const gap = card.height * GAP;
  // Above or below, the card clears its point with its edge; beside it, with its end.
  const x = right * (down === 0 ? card.width / 2 + gap : card.width / 2);
  const y = Math.sign(down) * (card.height / 2 + gap) + (down - Math.sign(down)) * card.height;
  return { x: point.x + x, y: point.y + y };
}

function inside({ x, y }: DrawnPoint, card: Size, frame: Size): DrawnPoint {
  const edge = card.height * EDGE;
  const within = (at: number, size: number, all: number) =>
    Math.min(Math.max(at, size / 2 + edge), Math.max(size / 2 + edge, all - size / 2 - edge));
  return { x: within(x, card.width, frame.width), y: within(y, card.height, frame.height) };
}

/** How much a card here would hide, in cards: what it shares with other cards, and one for each point under it. */
function hidden(
  centre: DrawnPoint,
  card: Size,
  cards: readonly DrawnPoint[],
  points: readonly DrawnPoint[],
): number {
  let shared = 0;
  for (const other of cards) {
    const wide = 1 - Math.abs(centre.x - other.x) / card.width;
    const high = 1 - Math.abs(centre.y - other.y) / card.height;
    if (wide > 0 && high > 0) shared += TOUCH + wide * high;
  }
  const under = points.filter(
    (point) =>
      Math.abs(centre.x - point.x) < card.width / 2 && Math.abs(centre.y - point.y) < card.height / 2,
  );
  return shared + under.length;
}
