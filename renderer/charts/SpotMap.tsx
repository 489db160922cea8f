import { FEW_SHOTS } from './fewShots.ts';
import type { CourtDimensions } from '../court/ruleSets.ts';
import type { CourtPoint } from '../court/spots.ts';
import type { Proportion } from '../stats/proportion.ts';
import { courtFrame, type DrawnPoint } from './courtFrame.ts';
import { CourtMap } from './CourtMap.tsx';
import { Glyph } from './Glyph.tsx';
import { placeCards } from './placeCards.ts';
import { linear } from './scale.ts';
import { useWidth } from './useWidth.ts';

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

/** A card of a spot in CSS pixels. */
interface Layout {
  readonly width: number;
  readonly height: number;
  readonly textX: number;
  readonly textClass: string;
  /** The bar from 0 to 100: its ends, how far below the row's middle, how thick. */
  readonly bar: {
    readonly from: number;
    readonly to: number;
    readonly below: number;
    readonly thick: number;
  };
  /** Where the glyph stands; null: on the bar, at the rate. */
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

/** The half court with a card at each spot: relaxed above pressured, each with its interval from 0 to 100. */
export function SpotMap({ court, label, marks }: Props) {
  const [box, width] = useWidth<HTMLDivElement>();
  const frame = courtFrame(court);
  const unit = frame.width / width;
  const layout = width < NARROW_BELOW ? NARROW : WIDE;
  const points = marks.map(({ point }) => frame.toDrawing(point));
  const places = placeCards(points, { width: layout.width * unit, height: layout.height * unit }, frame);
  return (
    <div ref={box} className="chart on-court">
      <CourtMap court={court} label={label}>
        {() =>
          marks.map((mark, at) => (
            <Card
              key={mark.name}
              mark={mark}
              point={points[at] ?? ORIGIN}
              place={places[at] ?? ORIGIN}
              unit={unit}
              layout={layout}
            />
          ))
        }
      </CourtMap>
    </div>
  );
}

const ORIGIN: DrawnPoint = { x: 0, y: 0 };

interface CardProps {
  readonly mark: SpotMark;
  readonly point: DrawnPoint;
  readonly place: DrawnPoint;
  /** Drawing units for one CSS pixel. */
  readonly unit: number;
  readonly layout: Layout;
}

function Card({ mark, point, place, unit, layout }: CardProps) {
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
        <rect className="spot-card" width={width} height={height} rx={8} />
        <Row condition="relaxed" tally={mark.relaxed} y={height * 0.27} layout={layout} />
        <Row condition="pressured" tally={mark.pressured} y={height * 0.73} layout={layout} />
      </g>
    </>
  );
}

interface RowProps {
  readonly condition: 'relaxed' | 'pressured';
  readonly tally: MarkRate;
  readonly y: number;
  readonly layout: Layout;
}

function Row({ condition, tally, y, layout }: RowProps) {
  const { bar, glyphX, glyphSize, textX, textClass } = layout;
  const { rate } = tally;
  const x = linear([0, 1], [bar.from, bar.to]);
  const barY = y + bar.below;
  return (
    <>
      <text className={textClass} x={textX} y={y + 5}>
        {written(tally, glyphX !== null)}
      </text>
      <line className="spot-track" x1={bar.from} x2={bar.to} y1={barY} y2={barY} />
      {rate ? (
        <rect
          className={`span ${condition}`}
          x={x(rate.low)}
          y={barY - bar.thick / 2}
          width={x(rate.high) - x(rate.low)}
          height={bar.thick}
          rx={bar.thick / 2}
        />
      ) : null}
      {glyphX !== null || rate ? (
        <Glyph
          kind={condition}
          x={glyphX ?? x(rate?.p ?? 0)}
          y={glyphX === null ? barY : y}
          size={glyphSize}
        />
      ) : null}
    </>
  );
}

function written({ makes, attempts, rate }: MarkRate, narrow: boolean): string {
  if (!rate) return 'none';
  if (attempts < FEW_SHOTS) return narrow ? `${makes}/${attempts}` : `${makes} of ${attempts}`;
  return `${Math.round(100 * rate.p)} %`;
}
