import { writeAddress } from '../../store/places.ts';

/** Nothing shot yet: kind, and with the way on. */
export function NoRounds() {
  return (
    <section className="panel">
      <p className="drop-headline">No rounds yet.</p>
      <p className="lead">
        Start with a pair: the same card once relaxed and once under pressure, and this screen compares the
        two. Or shoot relaxed rounds first, to know what you make when nothing is on the line.
      </p>
      <div className="row">
        <a className="button main" href={writeAddress('pair')}>
          A pair
        </a>
        <a className="button" href={writeAddress('relaxed')}>
          A relaxed round
        </a>
        <a className="button" href={writeAddress('files')}>
          I have records on paper or in a file
        </a>
      </div>
    </section>
  );
}
