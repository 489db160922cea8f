import { COURTS } from '../../court/ruleSets.ts';
import type { SpotName } from '../../court/spots.ts';
import type { Shooter } from '../../log/book.ts';
import { unplacedSpots } from '../../store/cardActions.ts';
import { useGym } from '../gymContext.ts';
import { spotPlaceWords } from './spotPlaceWords.ts';

interface Props {
  readonly shooter: Shooter;
  /** Puts a spot on the floor; null for a new one. */
  readonly onPlace: (name: SpotName | null) => void;
}

/** Spots besides the eight that every court has. */
export function SpotList({ shooter, onPlace }: Props) {
  const book = useGym((state) => state.book);
  const unplaced = unplacedSpots(book);
  return (
    <section className="panel" aria-labelledby="spot-list">
      <h2 id="spot-list">Spots of your own</h2>
      <p>
        Corners, wings, the top, elbows and the line are there already. Add the place you shoot from besides.
      </p>
      <button type="button" className="button" onClick={() => onPlace(null)}>
        Add a spot
      </button>
      <ul className="card-list">
        {[...book.ownSpots].map(([name, point]) => (
          <li key={name}>
            <h3>{name}</h3>
            <p className="quiet">{spotPlaceWords(point, COURTS[shooter.rules], shooter.units)}</p>
            <button type="button" className="button" onClick={() => onPlace(name)}>
              Move<span className="unseen"> {name}</span>
            </button>
          </li>
        ))}
        {unplaced.map((name) => (
          <li key={name}>
            <h3>{name}</h3>
            <p className="quiet">Named in a record you brought in, and not on the floor yet.</p>
            <button type="button" className="button" onClick={() => onPlace(name)}>
              Show where it is<span className="unseen">: {name}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
