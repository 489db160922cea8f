import type { IsoDate } from '../basics/units.ts';
import type { ScoredRound } from '../stats/forecastScore.ts';
import { Glyph } from './Glyph.tsx';
import { linear, ticks } from './scale.ts';
import { useWidth } from './useWidth.ts';

interface Props {
  /** What a reader of the screen hears instead of the drawing. */
  readonly label: string;
  /** Oldest first, at least one. */
  readonly rounds: readonly ScoredRound[];
  /** A day, as short as it can be. */
  readonly dayWords: (date: IsoDate) => string;
}

const TOP = 34;
const BOTTOM = 234;
const HEIGHT = 270;
const LEFT = 40;
const RIGHT = 8;
/** A few rounds stand side by side, not a hand apart. */
const MOST_COLUMN = 44;
const MOST_SIZE = 5;
/** Width of a day in words, with the gap beside it. */
const LABEL = 74;

/**
 * Rounds in the order they were shot, cards of all lengths on one scale: the bar is what was forecast, the mark what was
 * made. A line ties the mark to its bar where the round ended outside.
 */
export function ForecastChart({ label, rounds, dayWords }: Props) {
  const [box, width] = useWidth<HTMLDivElement>();
  const column = Math.min(MOST_COLUMN, Math.max(1, (width - LEFT - RIGHT) / rounds.length));
  const right = LEFT + column * rounds.length;
  const y = linear([0, 100], [BOTTOM, TOP]);
  const size = Math.min(MOST_SIZE, 0.36 * column);
  return (
    <div ref={box} className="chart">
      <svg width={width} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-label={label}>
        <text className="plot-name" x={0} y={TOP - 16}>
          Makes in 100 shots
        </text>
        {ticks(0, 100, 25).map((share) => (
          <g key={share}>
            <line className="grid" x1={LEFT} x2={right} y1={y(share)} y2={y(share)} />
            <text className="tick" x={LEFT - 8} y={y(share) + 5} textAnchor="end">
              {share}
            </text>
          </g>
        ))}
        {daysAlong(rounds, column).map((at) => (
          <g key={at}>
            <line
              className="grid"
              x1={LEFT + at * column}
              x2={LEFT + at * column}
              y1={TOP}
              y2={BOTTOM + 10}
            />
            <text className="tick" x={LEFT + at * column + 4} y={BOTTOM + 26}>
              {dayWords(rounds[at]?.date ?? '')}
            </text>
          </g>
        ))}
        {rounds.map((round, at) => (
          <Column
            key={round.round}
            round={round}
            x={LEFT + (at + 0.5) * column}
            y={(makes) => y((100 * makes) / round.attempts)}
            size={size}
          />
        ))}
      </svg>
    </div>
  );
}

interface ColumnProps {
  readonly round: ScoredRound;
  readonly x: number;
  readonly y: (makes: number) => number;
  readonly size: number;
}

function Column({ round: { condition, low, high, makes }, x, y, size }: ColumnProps) {
  // Half a make to either side, so that a span of one number has a height too.
  const top = y(high + 0.5);
  const bottom = y(low - 0.5);
  return (
    <g>
      <rect
        className={`span thin ${condition}`}
        x={x - size}
        y={top}
        width={2 * size}
        height={bottom - top}
        rx={2}
      />
      {makes >= low && makes <= high ? null : (
        <line className={`stray ${condition}`} x1={x} x2={x} y1={makes < low ? bottom : top} y2={y(makes)} />
      )}
      <Glyph kind={condition} x={x} y={y(makes)} size={size} />
    </g>
  );
}

/** The first round of each day, as far as there is room for the day in words. */
function daysAlong(rounds: readonly ScoredRound[], column: number): number[] {
  const shown: number[] = [];
  for (const [at, { date }] of rounds.entries()) {
    if (at > 0 && rounds[at - 1]?.date === date) continue;
    const before = shown.at(-1);
    const fitsRight = (rounds.length - at) * column > LABEL - RIGHT || at === 0;
    if (fitsRight && (before === undefined || (at - before) * column >= LABEL)) shown.push(at);
  }
  return shown;
}
