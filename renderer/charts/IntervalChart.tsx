import { Glyph, type GlyphKind } from './Glyph.tsx';
import { linear, ticks } from './scale.ts';
import { useWidth } from './useWidth.ts';

/** One estimate with its interval, in the unit of the axis. */
export interface IntervalRow {
  readonly kind: GlyphKind;
  readonly name: string;
  /** The estimate in words, to the right of the name. */
  readonly words: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface Axis {
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly write: (value: number) => string;
  /** What lies to the left and to the right, where the sides need a name. */
  readonly sides?: readonly [string, string];
}

interface Props {
  /** What a reader of the screen hears instead of the drawing. */
  readonly label: string;
  readonly rows: readonly IntervalRow[];
  readonly axis: Axis;
}

const ROW = 78;
const LINE = 52;
/** How far the lines of the axis reach above and below a row's middle. */
const REACH = 20;
const EDGE = 30;
const AXIS = 30;
const SIDES = 24;

/** Estimates one above the other on one axis, each with its interval. */
export function IntervalChart({ label, rows, axis }: Props) {
  const [box, width] = useWidth<HTMLDivElement>();
  const { from, to, step, write, sides } = axis;
  const x = linear([from, to], [EDGE, width - EDGE]);
  const floor = rows.length * ROW;
  const height = floor + AXIS + (sides ? SIDES : 0);
  return (
    <div ref={box} className="chart">
      <svg width={width} height={height} role="img" aria-label={label}>
        {ticks(from, to, step).map((value) => (
          <g key={value}>
            {rows.map(({ name }, at) => (
              <line
                key={name}
                className={value === 0 ? 'grid zero' : 'grid'}
                x1={x(value)}
                x2={x(value)}
                y1={at * ROW + LINE - REACH}
                y2={at * ROW + LINE + REACH}
              />
            ))}
            <text className="tick" x={x(value)} y={floor + 16} textAnchor="middle">
              {write(value)}
            </text>
          </g>
        ))}
        {sides ? (
          <>
            <text className="tick" x={EDGE} y={height - 4}>
              ← {sides[0]}
            </text>
            <text className="tick" x={width - EDGE} y={height - 4} textAnchor="end">
              {sides[1]} →
            </text>
          </>
        ) : null}
        {rows.map(({ kind, name, words, value, low, high }, at) => (
          <g key={name} transform={`translate(0 ${at * ROW})`}>
            <text className="row-name" x={4} y={20}>
              {name}
            </text>
            <text className="row-words" x={width - 4} y={20} textAnchor="end">
              {words}
            </text>
            <rect
              className={`span ${kind}`}
              x={x(low)}
              y={LINE - 10}
              width={Math.max(1, x(high) - x(low))}
              height={20}
              rx={3}
            />
            <Glyph kind={kind} x={x(value)} y={LINE} size={6} />
          </g>
        ))}
      </svg>
    </div>
  );
}
