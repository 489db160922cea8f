import { CardsOnCourt, placesOnCourt } from './CardsOnCourt.tsx';
import { NumberedSpots } from './NumberedSpots.tsx';
import type { SpotCardsProps } from './spotCard.ts';
import { useWidth } from './useWidth.ts';

/**
 * The half court with two figures for each spot, each with its interval: on cards beside the spots where the screen has
 * room for all of them, else as a list, and on the court the numbers in it.
 */
export function SpotCards(props: SpotCardsProps) {
  const [box, width] = useWidth<HTMLDivElement>();
  const places = placesOnCourt(props, width);
  return (
    <div ref={box} className="chart on-court">
      {places ? (
        <CardsOnCourt {...props} width={width} places={places} />
      ) : (
        <NumberedSpots {...props} width={width} />
      )}
    </div>
  );
}
