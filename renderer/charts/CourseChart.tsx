import type { Probability } from '../basics/units.ts';
import { linear, ticks } from './scale.ts';
import { useWidth } from './useWidth.ts';

/** One shot of a game. */
export interface CoursePoint {
  readonly made: boolean;
  /** Chance of winning once it was shot. */
  readonly after: Probability;
  /** What hung on it: the chance after a make minus the chance after a miss; below 0 in none. */
  readonly leverage: Probability;
}

interface Props {
  /** What a reader of the screen hears instead of the drawing. */
  readonly label: string;
  /** Chance before the first shot. */
  readonly start: Probability;
  /** In the order they were shot, at least one. */
  readonly points: readonly CoursePoint[];
}

const LEFT = 40;
const RIGHT = 10;
const TOP = 34;
const BOTTOM = 150;
const BARS_TOP = 204;
const BARS_BOTTOM = 264;
const HEIGHT = 296;
/** Beyond so many pixels a shot, marks do not grow. */
const MOST_SIZE = 5;
/** Room for a number under the axis. */
const LABEL = 44;

/**
 * A game shot by shot: above, the chance of winning, a filled disc after a make and an open ring after a miss; below, what
 * hung on each shot.
 */
export function CourseChart({ label, start, points }: Props) {
  const [box, width] = useWidth<HTMLDivElement>();
  const x = linear([0, points.length], [LEFT, width - RIGHT]);
  const y = linear([0, 100], [BOTTOM, TOP]);
  const bar = linear([0, 100], [BARS_BOTTOM, BARS_TOP]);
  const column = (width - LEFT - RIGHT) / points.length;
  const size = Math.max(1.5, Math.min(MOST_SIZE, 0.34 * column));
  const line = [start, ...points.map(({ after }) => after)].map(
    (chance, at) => `${x(at).toFixed(1)} ${y(100 * chance).toFixed(1)}`,
  );
  return (
    <div ref={box} className="chart">
      <svg width={width} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-label={label}>
        <Plot name="Wins in 100, after each shot" y={y} top={TOP} right={width - RIGHT} step={50} />
        <path className="course drop" d={`M${line.join('L')}`} />
        {points.map(({ made, after }, at) => (
          <circle
            // Shots have no name of their own: their place is what they are.
            // oxlint-disable-next-line react/no-array-index-key
            key={at}
            className={made ? 'shot-mark make' : 'shot-mark miss'}
            cx={x(at + 1)}
            cy={y(100 * after)}
            r={size}
          />
        ))}
        <Plot
          name="What hung on the shot, in points"
          y={bar}
          top={BARS_TOP}
          right={width - RIGHT}
          step={100}
        />
        {points.map(({ leverage }, at) => (
          <rect
            // oxlint-disable-next-line react/no-array-index-key
            key={at}
            className="hung"
            x={x(at + 1) - size}
            y={bar(100 * Math.max(0, leverage))}
            width={2 * size}
            height={BARS_BOTTOM - bar(100 * Math.max(0, leverage))}
          />
        ))}
        {shotsAlong(points.length, column).map((shot) => (
          <text key={shot} className="tick" x={x(shot)} y={BARS_BOTTOM + 22} textAnchor="middle">
            {shot}
          </text>
        ))}
      </svg>
    </div>
  );
}

interface PlotProps {
  readonly name: string;
  readonly y: (value: number) => number;
  readonly top: number;
  readonly right: number;
  readonly step: number;
}

function Plot({ name, y, top, right, step }: PlotProps) {
  return (
    <>
      <text className="plot-name" x={0} y={top - 14}>
        {name}
      </text>
      {ticks(0, 100, step).map((value) => (
        <g key={value}>
          <line className="grid" x1={LEFT} x2={right} y1={y(value)} y2={y(value)} />
          <text className="tick" x={LEFT - 8} y={y(value) + 5} textAnchor="end">
            {value}
          </text>
        </g>
      ))}
    </>
  );
}

/** Shots that are numbered along the axis: round steps, as far apart as the numbers need; always the last. */
function shotsAlong(count: number, column: number): number[] {
  const step = [1, 2, 5, 10, 20, 50].find((one) => one * column >= LABEL) ?? 100;
  const along = ticks(step, count, step);
  const last = along.at(-1) ?? 0;
  if (last === count) return along;
  return (count - last) * column >= LABEL ? [...along, count] : [...along.slice(0, -1), count];
}
