import { writeAddress } from '../../store/places.ts';

/** Nothing shot yet: kind, and with the way on. */
export function NoRounds() {
  return (
    <section className="panel">
      <p className="drop-headline">No rounds yet.</p>
      <p className="lead">
        Start with a relaxed one: it shows what you make when nothing is on the line. Then shoot the same card
        under pressure, and this screen compares the two.
      </p>
      <div className="row">
        <a className="button main" href={writeAddress('relaxed')}>
          A relaxed round
        </a>
        <a className="button" href={writeAddress('files')}>
          I have records on paper or in a file
        </a>
      </div>
    </section>
  );
}
