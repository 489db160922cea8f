import { SHOT_WORDS, spotWords } from '../../court/spots.ts';
import type { Tally } from '../../log/roundCells.ts';
import type { DropEstimate } from '../../stats/drop.ts';
import type { IndexPlace } from '../../stats/model/chokeIndex.ts';
import type { SpotFigures } from '../../store/figures.ts';
import { dropSpan, percent, pointsWords } from '../numberWords.ts';

interface Props {
  readonly places: readonly IndexPlace[];
  readonly spots: readonly SpotFigures[];
}

/** The table behind the drops by spot: each spot and kind of shot as it was shot, and evened out. */
export function DropTable({ places, spots }: Props) {
  return (
    <details className="behind">
      <summary>The numbers by spot</summary>
      <div className="scroll" role="region" aria-label="Drop by spot" tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th rowSpan={2} scope="col">
                Spot and shot
              </th>
              <th colSpan={3} scope="colgroup">
                As shot
              </th>
              <th colSpan={3} scope="colgroup">
                Evened out
              </th>
            </tr>
            <tr>
              <ThreeHeads />
              <ThreeHeads />
            </tr>
          </thead>
          <tbody>
            {places.map((place) => (
              <PlaceRow key={`${place.spot} ${place.shot}`} place={place} raw={rawDrop(place, spots)} />
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function ThreeHeads() {
  return (
    <>
      <th scope="col">Relaxed</th>
      <th scope="col">Pressured</th>
      <th scope="col">Drop</th>
    </>
  );
}

function rawDrop({ spot, shot }: IndexPlace, spots: readonly SpotFigures[]): DropEstimate | null {
  return spots.find((one) => one.spot === spot)?.kinds.find((kind) => kind.shot === shot)?.drop ?? null;
}

function PlaceRow({ place, raw }: { readonly place: IndexPlace; readonly raw: DropEstimate | null }) {
  return (
    <tr>
      <th scope="row">
        {spotWords(place.spot)}, {SHOT_WORDS[place.shot]}
        {place.raw.pressured.attempts === 0 ? (
          <>
            <br />
            <span className="quiet">judged by the other spots</span>
          </>
        ) : null}
      </th>
      <TallyCell tally={place.raw.relaxed} />
      <TallyCell tally={place.raw.pressured} />
      <DropCell drop={raw} />
      <td>{Math.round(place.relaxed)} %</td>
      <td>{Math.round(place.pressured)} %</td>
      <DropCell drop={place} />
    </tr>
  );
}

function TallyCell({ tally }: { readonly tally: Tally }) {
  if (tally.attempts === 0) return <td>no shots</td>;
  return (
    <td>
      {percent(tally)}
      <br />
      <span className="quiet">
        {tally.makes} of {tally.attempts}
      </span>
    </td>
  );
}

function DropCell({ drop }: { readonly drop: DropEstimate | null }) {
  if (!drop) return <td>–</td>;
  return (
    <td>
      {pointsWords(drop.points)}
      <br />
      <span className="quiet">{dropSpan(drop)}</span>
    </td>
  );
}
