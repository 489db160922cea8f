import type { CourtDimensions } from '../court/ruleSets.ts';
import type { CourtPoint } from '../court/spots.ts';
import { courtFrame, type DrawnPoint } from './courtFrame.ts';
import { CourtMap } from './CourtMap.tsx';
import { Glyph, type GlyphKind } from './Glyph.tsx';
import { placeCards } from './placeCards.ts';
import { linear } from './scale.ts';
import { useWidth } from './useWidth.ts';

/** One line of a card: a figure, and its interval on the scale all cards share. */
export interface CardRow {
  readonly kind: GlyphKind;
  /** An outline and a thin interval: as it was shot. */
  readonly open?: boolean;
  /** The figure, and as short as it can be for a phone. */
  readonly words: readonly [wide: string, narrow: string];
  /** Null where there is none. */
  readonly span: { readonly value: number; readonly low: number; readonly high: number } | null;
}

/** What stands at one spot. */
export interface SpotCard {
  readonly name: string;
  readonly point: CourtPoint;
  readonly rows: readonly [CardRow, CardRow];
  /** A broken edge: not from shots at this spot alone. */
  readonly broken?: boolean;
}

interface Props {
  readonly court: CourtDimensions;
  /** What a reader of the screen hears instead of the drawing. */
  readonly label: string;
  readonly cards: readonly SpotCard[];
  /** The ends of the scale, and a value to be marked on it. */
  readonly scale: { readonly from: number; readonly to: number; readonly mark?: number };
}

/** A card of a spot in CSS pixels. */
interface Layout {
  readonly width: number;
  readonly height: number;
  readonly textX: number;
  readonly textClass: string;
  /** The bar: its ends, how far below the row's middle, how thick. */
  readonly bar: {
    readonly from: number;
    readonly to: number;
    readonly below: number;
    readonly thick: number;
  };
  /** Where the glyph stands; null: on the bar, at the value. */
  readonly glyphX: number | null;
  readonly glyphSize: number;
}

const WIDE: Layout = {
  width: 160,
  height: 64,
  textX: 9,
  textClass: 'spot-rate',
  bar: { from: 67, to: 152, below: 0, thick: 12 },
  glyphX: null,
  glyphSize: 4,
};
/** On a phone the bar lies under the figure. */
const NARROW: Layout = {
  width: 56,
  height: 52,
  textX: 17,
  textClass: 'spot-rate narrow',
  bar: { from: 4, to: 52, below: 10, thick: 4 },
  glyphX: 9,
  glyphSize: 4,
};
const NARROW_BELOW = 640;
/** Half the height of the marked value on a bar, and the thickness of an open row's interval. */
const MARK = 8;
const OPEN_THICK = 2;

/** The half court with a card at each spot: two figures, each with its interval. */
export function SpotCards({ court, label, cards, scale }: Props) {
  const [box, width] = useWidth<HTMLDivElement>();
  const frame = courtFrame(court);
  const unit = frame.width / width;
  const layout = width < NARROW_BELOW ? NARROW : WIDE;
  const points = cards.map(({ point }) => frame.toDrawing(point));
  const places = placeCards(points, { width: layout.width * unit, height: layout.height * unit }, frame);
  return (
    <div ref={box} className="chart on-court">
      <CourtMap court={court} label={label}>
        {() =>
          cards.map((card, at) => (
            <Card
              key={card.name}
              card={card}
              point={points[at] ?? ORIGIN}
              place={places[at] ?? ORIGIN}
              unit={unit}
              layout={layout}
              scale={scale}
            />
          ))
        }
      </CourtMap>
    </div>
  );
}

const ORIGIN: DrawnPoint = { x: 0, y: 0 };

interface CardProps extends Pick<Props, 'scale'> {
  readonly card: SpotCard;
  readonly point: DrawnPoint;
  readonly place: DrawnPoint;
  /** Drawing units for one CSS pixel. */
  readonly unit: number;
  readonly layout: Layout;
}

function Card({ card, point, place, unit, layout, scale }: CardProps) {
  const { width, height } = layout;
  return (
    <>
      <line
        className="spot-leader"
        x1={point.x}
        y1={point.y}
        x2={place.x}
        y2={place.y}
        strokeWidth={2 * unit}
      />
      <circle className="spot-point" cx={point.x} cy={point.y} r={5 * unit} />
      <g
        transform={`translate(${place.x} ${place.y}) scale(${unit}) translate(${-width / 2} ${-height / 2})`}
      >
        <rect
          className={card.broken ? 'spot-card broken' : 'spot-card'}
          width={width}
          height={height}
          rx={8}
        />
        {card.rows.map((row, at) => (
          <Row key={at} row={row} y={height * (at === 0 ? 0.27 : 0.73)} layout={layout} scale={scale} />
        ))}
      </g>
    </>
  );
}

interface RowProps extends Pick<CardProps, 'layout' | 'scale'> {
  readonly row: CardRow;
  readonly y: number;
}

function Row({ row: { kind, open = false, words, span }, y, layout, scale }: RowProps) {
  const { bar, glyphX, glyphSize, textX, textClass } = layout;
  const x = linear([scale.from, scale.to], [bar.from, bar.to]);
  const barY = y + bar.below;
  const thick = open ? OPEN_THICK : bar.thick;
  return (
    <>
      <text className={textClass} x={textX} y={y + 5}>
        {words[glyphX === null ? 0 : 1]}
      </text>
      <line className="spot-track" x1={bar.from} x2={bar.to} y1={barY} y2={barY} />
      {scale.mark === undefined ? null : (
        <line
          className="spot-track"
          x1={x(scale.mark)}
          x2={x(scale.mark)}
          y1={barY - Math.min(MARK, bar.thick)}
          y2={barY + Math.min(MARK, bar.thick)}
        />
      )}
      {span ? (
        <rect
          className={`span ${kind}`}
          x={x(span.low)}
          y={barY - thick / 2}
          width={x(span.high) - x(span.low)}
          height={thick}
          rx={thick / 2}
        />
      ) : null}
      {glyphX !== null || span ? (
        <Glyph
          kind={kind}
          open={open}
          x={glyphX ?? x(span?.value ?? 0)}
          y={glyphX === null ? barY : y}
          size={glyphSize}
        />
      ) : null}
    </>
  );
}
