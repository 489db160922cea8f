import type { CourtDimensions } from '../court/ruleSets.ts';
import type { CourtPoint } from '../court/spots.ts';
import type { DropEstimate } from '../stats/drop.ts';
import { SpotCards, type CardRow } from './SpotCards.tsx';

/** One spot with its drop, as it was shot and as the model evens it out. Points, positive = worse under pressure. */
export interface SpotDropMark {
  readonly name: string;
  readonly point: CourtPoint;
  /** Null where the spot was not shot both ways. */
  readonly raw: DropEstimate | null;
  readonly model: DropEstimate;
  /** Never shot under pressure: the model's figure comes from the other spots. */
  readonly byOthers: boolean;
}

interface Props {
  readonly court: CourtDimensions;
  readonly label: string;
  readonly marks: readonly SpotDropMark[];
  readonly write: (points: number) => string;
}

const LEAST_REACH = 20;

/**
 * How far the scale reaches to either side of 0. Every figure stands on it; the interval of a few shots may run beyond,
 * since it would leave no room for the rest.
 */
export function dropReach(marks: readonly Pick<SpotDropMark, 'raw' | 'model'>[]): number {
  const values = marks.flatMap(({ raw, model }) => [raw?.points ?? 0, model.low, model.high]);
  return Math.max(LEAST_REACH, Math.ceil(Math.max(...values.map(Math.abs)) / 10) * 10);
}

/** The half court with a card at each spot: the drop as it was shot above the drop evened out, each with its interval. */
export function SpotDrops({ court, label, marks, write }: Props) {
  const reach = dropReach(marks);
  const rowOf = (drop: DropEstimate, open: boolean): CardRow => ({
    kind: 'drop',
    open,
    words: [write(drop.points), write(drop.points)],
    span: { value: drop.points, low: drop.low, high: drop.high },
  });
  return (
    <SpotCards
      court={court}
      label={label}
      scale={{ from: -reach, to: reach, mark: 0 }}
      cards={marks.map(({ name, point, raw, model, byOthers }) => ({
        name,
        point,
        broken: byOthers,
        rows: [raw ? rowOf(raw, true) : NOT_SHOT, rowOf(model, false)],
      }))}
    />
  );
}

const NOT_SHOT: CardRow = { kind: 'drop', open: true, words: ['none', '–'], span: null };
