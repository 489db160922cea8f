import type { CourtDimensions } from '../court/ruleSets.ts';
import type { CourtPoint } from '../court/spots.ts';
import type { Proportion } from '../stats/proportion.ts';
import { FEW_SHOTS } from './fewShots.ts';
import { tensAround } from './scale.ts';
import type { CardRow } from './spotCard.ts';
import { SpotCards } from './SpotCards.tsx';

/** Makes of attempts in one condition. */
export interface MarkRate {
  readonly makes: number;
  readonly attempts: number;
  readonly rate: Proportion | null;
}

/** One spot with its rates. */
export interface SpotMark {
  readonly name: string;
  readonly point: CourtPoint;
  readonly relaxed: MarkRate;
  readonly pressured: MarkRate;
}

interface Props {
  readonly court: CourtDimensions;
  readonly label: string;
  readonly marks: readonly SpotMark[];
}

/** Makes in 100 shots from one end of the scale to the other, at least. */
const LEAST_SCALE = 50;

/** The ends of the scale in makes in 100 shots, whole tens around every span. */
export function rateScale(
  marks: readonly Pick<SpotMark, 'relaxed' | 'pressured'>[],
): readonly [number, number] {
  const ends = marks
    .flatMap(({ relaxed, pressured }) => [relaxed.rate, pressured.rate])
    .flatMap((rate) => (rate ? [100 * rate.low, 100 * rate.high] : []));
  return ends.length === 0 ? [0, 100] : tensAround(ends, LEAST_SCALE, [0, 100]);
}

/** The half court with two rates for each spot: relaxed above pressured, each with its interval. */
export function SpotMap({ court, label, marks }: Props) {
  const [from, to] = rateScale(marks);
  return (
    <SpotCards
      court={court}
      label={label}
      scale={{ from, to }}
      cards={marks.map(({ name, point, relaxed, pressured }) => ({
        name,
        point,
        rows: [rowOf('relaxed', relaxed), rowOf('pressured', pressured)],
      }))}
    />
  );
}

function rowOf(kind: 'relaxed' | 'pressured', { makes, attempts, rate }: MarkRate): CardRow {
  if (!rate) return { kind, of: kind, figure: 'none', unit: '', span: null };
  const few = attempts < FEW_SHOTS;
  return {
    kind,
    of: kind,
    figure: few ? `${makes} of ${attempts}` : String(Math.round(100 * rate.p)),
    unit: few ? '' : '%',
    span: { value: 100 * rate.p, low: 100 * rate.low, high: 100 * rate.high },
  };
}
