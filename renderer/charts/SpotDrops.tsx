import type { CourtDimensions } from '../court/ruleSets.ts';
import type { CourtPoint } from '../court/spots.ts';
import type { DropEstimate } from '../stats/drop.ts';
import { tensAround } from './scale.ts';
import type { CardRow } from './spotCard.ts';
import { SpotCards } from './SpotCards.tsx';

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

/** Points from one end of the scale to the other, at least. */
const LEAST_SCALE = 40;

/**
 * The ends of the scale, in whole tens around 0. Every figure stands on it; the interval of a few shots may run beyond,
 * since it would leave no room for the rest.
 */
export function dropScale(marks: readonly Pick<SpotDropMark, 'raw' | 'model'>[]): readonly [number, number] {
  const values = marks.flatMap(({ raw, model }) => [raw?.points ?? 0, model.low, model.high]);
  return tensAround([-10, 10, ...values], LEAST_SCALE, [-100, 100]);
}

/** The half court with two drops for each spot: as it was shot above evened out, each with its interval. */
export function SpotDrops({ court, label, marks, write }: Props) {
  const [from, to] = dropScale(marks);
  const rowOf = (drop: DropEstimate, open: boolean): CardRow => ({
    kind: 'drop',
    open,
    of: open ? 'as shot' : 'evened out',
    figure: write(drop.points),
    unit: Math.abs(Math.round(drop.points)) === 1 ? 'point' : 'points',
    span: { value: drop.points, low: drop.low, high: drop.high },
  });
  return (
    <SpotCards
      court={court}
      label={label}
      scale={{ from, to, mark: 0 }}
      cards={marks.map(({ name, point, raw, model, byOthers }) => ({
        name,
        point,
        broken: byOthers,
        rows: [raw ? rowOf(raw, true) : NOT_SHOT, rowOf(model, false)],
      }))}
    />
  );
}

const NOT_SHOT: CardRow = { kind: 'drop', open: true, of: 'as shot', figure: 'none', unit: '', span: null };
