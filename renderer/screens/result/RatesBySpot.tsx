import { FEW_SHOTS } from '../../charts/fewShots.ts';
import { rateScale, SpotMap, type SpotMark } from '../../charts/SpotMap.tsx';
import { COURTS } from '../../court/ruleSets.ts';
import { SHOT_WORDS, spotWords } from '../../court/spots.ts';
import { ConditionKey } from './ConditionKey.tsx';
import { RateCells, RateTable } from './RateTable.tsx';
import { inCourtOrder, pointOf, type SpotProps } from './spotsOnCourt.ts';

/** The rates where they were shot. */
export function RatesBySpot({ figures, rules, ownSpots }: SpotProps) {
  const court = COURTS[rules];
  const spots = inCourtOrder(figures.spots);
  const marks = spots.flatMap(({ spot, relaxed, pressured }): SpotMark[] => {
    const point = pointOf(spot, court, ownSpots);
    return point ? [{ name: spotWords(spot), point, relaxed, pressured }] : [];
  });
  const [from, to] = rateScale(marks);
  return (
    <>
      <ConditionKey />
      <SpotMap
        court={court}
        marks={marks}
        label="Make rates by spot on the half court; the table below holds the same."
      />
      <p className="quiet">
        Each line runs from {from} to {to} makes in 100 shots, and on it lies the span. Below {FEW_SHOTS}{' '}
        shots the count stands there instead of a percentage.
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
    </>
  );
}
