import type { CourtDimensions } from '../court/ruleSets.ts';
import type { CourtPoint } from '../court/spots.ts';
import type { Proportion } from '../stats/proportion.ts';
import { FEW_SHOTS } from './fewShots.ts';
import { SpotCards, type CardRow } from './SpotCards.tsx';

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

/** The half court with a card at each spot: relaxed above pressured, each with its interval from 0 to 100. */
export function SpotMap({ court, label, marks }: Props) {
  return (
    <SpotCards
      court={court}
      label={label}
      scale={{ from: 0, to: 1 }}
      cards={marks.map(({ name, point, relaxed, pressured }) => ({
        name,
        point,
        rows: [rowOf('relaxed', relaxed), rowOf('pressured', pressured)],
      }))}
    />
  );
}

function rowOf(kind: 'relaxed' | 'pressured', { makes, attempts, rate }: MarkRate): CardRow {
  if (!rate) return { kind, words: ['none', 'none'], span: null };
  const percent = `${Math.round(100 * rate.p)} %`;
  return {
    kind,
    words: attempts < FEW_SHOTS ? [`${makes} of ${attempts}`, `${makes}/${attempts}`] : [percent, percent],
    span: { value: rate.p, low: rate.low, high: rate.high },
  };
}
