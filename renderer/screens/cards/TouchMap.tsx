import { CourtMap } from '../../charts/CourtMap.tsx';
import { COURTS } from '../../court/ruleSets.ts';
import { isSpot, SPOTS, spotPoint, spotWords, type CourtPoint, type SpotName } from '../../court/spots.ts';
import type { Shooter } from '../../log/book.ts';
import { useGym } from '../gymContext.ts';

interface Props {
  readonly shooter: Shooter;
  readonly label: string;
  readonly chosen: SpotName | null;
  readonly onChoose?: (spot: SpotName) => void;
  /** A touch on the bare floor counts as well. */
  readonly onFloor?: (point: CourtPoint) => void;
  /** Where a spot is about to stand. */
  readonly placing?: CourtPoint;
}

/** A touch this far from a spot still means it, in metres: on a tablet, wider than a thumb. */
const REACH = 2.2;

/** The court with the standard spots and the shooters' own. Touch near a spot to choose it. */
export function TouchMap({ shooter, label, chosen, onChoose, onFloor, placing }: Props) {
  const court = COURTS[shooter.rules];
  const ownSpots = useGym(({ book }) => book.ownSpots);
  const places: (readonly [SpotName, CourtPoint])[] = [
    ...SPOTS.map((spot) => [spot, spotPoint(spot, court)] as const),
    ...ownSpots,
  ];
  const touched = (point: CourtPoint) => {
    if (onFloor) onFloor(point);
    const [spot, at] = nearest(places, point);
    if (Math.hypot(at.x - point.x, at.y - point.y) <= REACH) onChoose?.(spot);
  };
  return (
    <CourtMap court={court} label={label} onFloor={touched}>
      {(toDrawing) => (
        <>
          {places.map(([spot, point]) => {
            const { x, y } = toDrawing(point);
            return (
              <g key={spot} className={spot === chosen ? 'map-spot chosen' : 'map-spot'}>
                <circle cx={x} cy={y} r={34} />
                {isSpot(spot) ? null : (
                  <text x={x} y={y + 78} textAnchor="middle">
                    {spotWords(spot)}
                  </text>
                )}
              </g>
            );
          })}
          {placing ? <Cross {...toDrawing(placing)} /> : null}
        </>
      )}
    </CourtMap>
  );
}

function Cross({ x, y }: { readonly x: number; readonly y: number }) {
  return (
    <g className="map-cross">
      <circle cx={x} cy={y} r={46} />
      <path d={`M${x - 75} ${y}H${x + 75}M${x} ${y - 75}V${y + 75}`} />
    </g>
  );
}

function nearest(places: readonly (readonly [SpotName, CourtPoint])[], point: CourtPoint) {
  const away = ([, { x, y }]: readonly [SpotName, CourtPoint]) => Math.hypot(x - point.x, y - point.y);
  return places.reduce((best, place) => (away(place) < away(best) ? place : best));
}
