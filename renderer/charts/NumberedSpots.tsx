import { apart } from './apart.ts';
import { courtFrame, type DrawnPoint } from './courtFrame.ts';
import { CourtMap } from './CourtMap.tsx';
import { GlyphIcon } from './Glyph.tsx';
import { SpanBar, type BarScale } from './SpanBar.tsx';
import type { CardRow, SpotCard, SpotCardsProps } from './spotCard.ts';
import { usePrinting } from './usePrinting.ts';

/** The court is a key to the list and need not be larger, CSS pixels. */
const MOST_WIDTH = { screen: 460, paper: 320 };
/** Of the disc a number stands in. */
const RADIUS = 13;

/** The half court with a number at each spot, and under it the cards of the spots by number. */
export function NumberedSpots({
  court,
  label,
  cards,
  scale,
  width,
}: SpotCardsProps & { readonly width: number }) {
  const printing = usePrinting();
  const courtWidth = Math.min(width, printing ? MOST_WIDTH.paper : MOST_WIDTH.screen);
  const frame = courtFrame(court);
  const unit = frame.width / courtWidth;
  const points = cards.map(({ point }) => frame.toDrawing(point));
  const discs = apart(points, 2 * (RADIUS + 1) * unit, frame);
  return (
    <>
      <div className="numbered-court" style={{ width: courtWidth }}>
        <CourtMap court={court} label={label}>
          {() =>
            cards.map(({ name }, at) => (
              <Disc
                key={name}
                nth={at + 1}
                point={points[at] ?? ORIGIN}
                place={discs[at] ?? ORIGIN}
                unit={unit}
              />
            ))
          }
        </CourtMap>
      </div>
      <ol className="spot-list">
        {cards.map((card, at) => (
          <Item key={card.name} nth={at + 1} card={card} scale={scale} />
        ))}
      </ol>
    </>
  );
}

const ORIGIN: DrawnPoint = { x: 0, y: 0 };

interface DiscProps {
  readonly nth: number;
  readonly point: DrawnPoint;
  /** Where the disc is drawn; beside its point where another one was too near. */
  readonly place: DrawnPoint;
  readonly unit: number;
}

function Disc({ nth, point, place, unit }: DiscProps) {
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
      <circle className="spot-point" cx={point.x} cy={point.y} r={3 * unit} />
      <g transform={`translate(${place.x} ${place.y}) scale(${unit})`}>
        <circle className="spot-disc" r={RADIUS} />
        <text className="spot-number" y={6} textAnchor="middle">
          {nth}
        </text>
      </g>
    </>
  );
}

interface ItemProps {
  readonly nth: number;
  readonly card: SpotCard;
  readonly scale: BarScale;
}

function Item({ nth, card: { name, rows, broken }, scale }: ItemProps) {
  return (
    <li className={broken ? 'spot-card broken' : 'spot-card'}>
      <p className="spot-title">
        <span className="spot-number">{nth}</span> {name}
      </p>
      {rows.map((row) => (
        <Row key={row.of} row={row} scale={scale} />
      ))}
    </li>
  );
}

function Row({ row, scale }: { readonly row: CardRow } & Pick<ItemProps, 'scale'>) {
  const { kind, open = false, of, figure, unit, span } = row;
  return (
    <div className="spot-row">
      <p>
        <GlyphIcon kind={kind} open={open} />
        <span className="unseen">{of}: </span>
        <span>
          <span className="spot-figure">{figure}</span> {unit}
        </span>
      </p>
      <SpanBar kind={kind} open={open} span={span} scale={scale} />
    </div>
  );
}
