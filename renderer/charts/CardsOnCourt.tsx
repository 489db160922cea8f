import { courtFrame, type DrawnPoint } from './courtFrame.ts';
import { CourtMap } from './CourtMap.tsx';
import { leaderEnd, placeCards } from './placeCards.ts';
import { BAR_HEIGHT, SpanBar, type BarScale } from './SpanBar.tsx';
import type { CardRow, SpotCard, SpotCardsProps } from './spotCard.ts';

/** A card in CSS pixels. */
const CARD = { width: 228, height: 96 };
/** On a narrower court cards would hide too much of it. */
const LEAST_WIDTH = 840;
/** In a card: the left edge of words, the bar, the lines the words stand on. */
const LEFT = 10;
const BAR = { x: 114, width: 102 };
const NAME_LINE = 21;
const ROW_LINES = [51, 85] as const;
/** From the line a figure stands on up to its middle. */
const RISE = 10;
const LONGEST_NAME = 24;
const POINT = 5;

/**
 * Where the cards lie on a court of this width, in the drawing's unit; null where it has no room for them.
 *
 * @param width in CSS pixels
 */
export function placesOnCourt({ court, cards }: SpotCardsProps, width: number): DrawnPoint[] | null {
  if (width < LEAST_WIDTH) return null;
  const frame = courtFrame(court);
  const points = cards.map(({ point }) => frame.toDrawing(point));
  return placeCards(points, cardSize(frame.width / width), frame);
}

/** @param unit drawing units for one CSS pixel */
function cardSize(unit: number): typeof CARD {
  return { width: CARD.width * unit, height: CARD.height * unit };
}

interface Props extends SpotCardsProps {
  readonly width: number;
  readonly places: readonly DrawnPoint[];
}

/** The half court with a card beside each spot, tied to it by a leader. */
export function CardsOnCourt({ court, label, cards, scale, width, places }: Props) {
  const unit = courtFrame(court).width / width;
  return (
    <CourtMap court={court} label={label}>
      {(toDrawing) => (
        <>
          {cards.map(({ name, point }, at) => (
            <Leader key={name} point={toDrawing(point)} place={places[at] ?? ORIGIN} unit={unit} />
          ))}
          {cards.map((card, at) => (
            <Card key={card.name} card={card} place={places[at] ?? ORIGIN} unit={unit} scale={scale} />
          ))}
        </>
      )}
    </CourtMap>
  );
}

const ORIGIN: DrawnPoint = { x: 0, y: 0 };

interface PlacedProps {
  readonly place: DrawnPoint;
  readonly unit: number;
}

function Leader({ point, place, unit }: PlacedProps & { readonly point: DrawnPoint }) {
  const end = leaderEnd(point, place, cardSize(unit));
  return (
    <>
      <line className="spot-leader" x1={point.x} y1={point.y} x2={end.x} y2={end.y} strokeWidth={3 * unit} />
      <circle className="spot-point" cx={point.x} cy={point.y} r={POINT * unit} />
    </>
  );
}

interface CardProps extends PlacedProps {
  readonly card: SpotCard;
  readonly scale: BarScale;
}

function Card({ card: { name, rows, broken }, place, unit, scale }: CardProps) {
  const { width, height } = CARD;
  return (
    <g transform={`translate(${place.x} ${place.y}) scale(${unit}) translate(${-width / 2} ${-height / 2})`}>
      <rect className={broken ? 'spot-card broken' : 'spot-card'} width={width} height={height} rx={8} />
      <text className="spot-name" x={LEFT} y={NAME_LINE}>
        {name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1)}…` : name}
      </text>
      {rows.map((row, at) => (
        <Row key={row.of} row={row} line={ROW_LINES[at] ?? 0} scale={scale} />
      ))}
    </g>
  );
}

interface RowProps extends Pick<CardProps, 'scale'> {
  readonly row: CardRow;
  readonly line: number;
}

function Row({ row: { kind, open = false, figure, unit, span }, line, scale }: RowProps) {
  return (
    <>
      <text x={LEFT} y={line}>
        <tspan className="spot-figure">{figure}</tspan> {unit}
      </text>
      <SpanBar
        kind={kind}
        open={open}
        span={span}
        scale={scale}
        at={{ x: BAR.x, y: line - RISE - BAR_HEIGHT / 2, width: BAR.width }}
      />
    </>
  );
}
