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

/** A row: its height, where its words stand and where its line; with name and words side by side, or one above the other. */
const BESIDE = { tall: 78, wordsY: 20, line: 52 };
const ABOVE = { tall: 98, wordsY: 41, line: 72 };
/** About how wide a letter is: names are larger and bolder than words. */
const NAME_LETTER = 8.6;
const WORDS_LETTER = 7.4;
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
  const beside = rows.every((row) => fits(row, width));
  const { tall, wordsY, line } = beside ? BESIDE : ABOVE;
  const floor = rows.length * tall;
  const height = floor + AXIS + (sides ? SIDES : 0);
  return (
    <div ref={box} className="chart">
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
        {ticks(from, to, step).map((value) => (
          <g key={value}>
            {rows.map(({ name }, at) => (
              <line
                key={name}
                className={value === 0 ? 'grid zero' : 'grid'}
                x1={x(value)}
                x2={x(value)}
                y1={at * tall + line - REACH}
                y2={at * tall + line + REACH}
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
          <g key={name} transform={`translate(0 ${at * tall})`}>
            <text className="row-name" x={4} y={20}>
              {name}
            </text>
            <text
              className="row-words"
              x={beside ? width - 4 : 4}
              y={wordsY}
              textAnchor={beside ? 'end' : 'start'}
            >
              {words}
            </text>
            <rect
              className={`span ${kind}`}
              x={x(low)}
              y={line - 10}
              width={Math.max(1, x(high) - x(low))}
              height={20}
              rx={3}
            />
            <g className={`whisker ${kind}`}>
              <line x1={x(low)} x2={x(low)} y1={line - 10} y2={line + 10} />
              <line x1={x(high)} x2={x(high)} y1={line - 10} y2={line + 10} />
            </g>
            <Glyph kind={kind} x={x(value)} y={line} size={5} />
          </g>
        ))}
      </svg>
    </div>
  );
}

function fits({ name, words }: IntervalRow, width: number): boolean {
  return name.length * NAME_LETTER + words.length * WORDS_LETTER + EDGE < width;
}
