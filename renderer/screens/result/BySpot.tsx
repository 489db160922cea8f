import { FEW_SHOTS } from '../../charts/fewShots.ts';
import { SpotMap, type SpotMark } from '../../charts/SpotMap.tsx';
import { COURTS, type RuleSet } from '../../court/ruleSets.ts';
import { isSpot, SHOT_WORDS, spotPoint, SPOTS, spotWords, type CourtPoint } from '../../court/spots.ts';
import type { Figures, SpotFigures } from '../../store/figures.ts';
import { ConditionKey } from './ConditionKey.tsx';
import { RateCells, RateTable } from './RateTable.tsx';

interface Props {
  readonly figures: Pick<Figures, 'spots'>;
  readonly rules: RuleSet;
  readonly ownSpots: ReadonlyMap<string, CourtPoint>;
}

/** The rates where they were shot. */
export function BySpot({ figures, rules, ownSpots }: Props) {
  const court = COURTS[rules];
  const spots = figures.spots.toSorted((a, b) => placeInOrder(a) - placeInOrder(b));
  const marks = spots.flatMap((spot): SpotMark[] => {
    const point = isSpot(spot.spot) ? spotPoint(spot.spot, court) : ownSpots.get(spot.spot);
    return point
      ? [{ name: spotWords(spot.spot), point, relaxed: spot.relaxed, pressured: spot.pressured }]
      : [];
  });
  return (
    <section className="panel">
      <h2>By spot</h2>
      <ConditionKey />
      <SpotMap
        court={court}
        marks={marks}
        label="Make rates by spot on the half court; the table below holds the same."
      />
      <p className="quiet">
        Each bar runs from 0 to 100 makes in 100, with its span. Below {FEW_SHOTS} shots the count stands
        there instead of a percentage.
        {marks.length < spots.length
          ? ' Spots whose place on the court is not known stand in the table alone.'
          : ''}
      </p>
      <RateTable summary="The numbers by spot" label="Numbers by spot" first="Spot and shot">
        {spots.flatMap(({ spot, kinds }) =>
          kinds.map(({ shot, ...kind }) => (
            <tr key={`${spot} ${shot}`}>
              <th scope="row">
                {spotWords(spot)}, {SHOT_WORDS[shot]}
              </th>
              <RateCells summary={kind} />
            </tr>
          )),
        )}
      </RateTable>
    </section>
  );
}

/** Standard spots in court order, own spots after them. */
function placeInOrder({ spot }: SpotFigures): number {
  const place = (SPOTS as readonly string[]).indexOf(spot);
  return place === -1 ? SPOTS.length : place;
}
