import { CourtMap } from '../../charts/CourtMap.tsx';
import { COURTS, type RuleSet } from '../../court/ruleSets.ts';
import { isSpot, spotPoint, spotWords, type SpotName } from '../../court/spots.ts';
import type { Round } from '../../log/book.ts';
import { useGym } from '../gymContext.ts';

interface Props {
  readonly rules: RuleSet;
  readonly round: Round;
  readonly stop: number;
}

/** Where to stand, on the lines of the shooter's own court. */
export function SpotOnCourt({ rules, round, stop }: Props) {
  const ownSpots = useGym(({ book }) => book.ownSpots);
  const court = COURTS[rules];
  const pointOf = (spot: SpotName) => (isSpot(spot) ? spotPoint(spot, court) : ownSpots.get(spot));
  const here = round.stops[stop];
  return (
    <div className="court-small">
      <CourtMap court={court} label={`Stand here: ${here ? spotWords(here.spot) : ''}`}>
        {(toDrawing) =>
          round.stops.map(({ spot }, at) => {
            const point = pointOf(spot);
            if (!point) return null;
            const { x, y } = toDrawing(point);
            const now = at === stop;
            return <circle key={at} className={now ? 'spot-now' : 'spot'} cx={x} cy={y} r={now ? 62 : 26} />;
          })
        }
      </CourtMap>
    </div>
  );
}
