import { gameById, type ListedGame } from '../../store/gameActions.ts';
import { writeAddress } from '../../store/places.ts';
import { stopsWords } from '../cards/stopsWords.ts';
import { useGym } from '../gymContext.ts';

/** What a game is shot on. */
export function GameShots({ game }: { readonly game: ListedGame }) {
  const listed = useGym(({ book }) => gameById(book, game.id) !== null);
  return (
    <>
      <h2>The shots</h2>
      <p>{stopsWords(game.plan.family === 'trips' ? game.stops.slice(0, 1) : game.stops)}</p>
      <p className="quiet">{orderWords(game)} Tap every shot; each counts on your record.</p>
      {listed ? (
        <div className="row">
          <a className="button" href={writeAddress('game', game.id)}>
            {game.own ? 'Change its numbers' : 'Make one like it'}
          </a>
          {game.plan.family === 'duel' ? null : (
            <a className="button plain" href={writeAddress('together', game.id)}>
              Play it with others
            </a>
          )}
        </div>
      ) : null}
    </>
  );
}

function orderWords({ plan }: ListedGame): string {
  switch (plan.family) {
    case 'streak':
    case 'race':
    case 'lives':
      return 'Round and round, until it is decided.';
    case 'climb':
      return 'Each stop is a step.';
    case 'trips':
      return 'Trip by trip.';
    case 'duel':
      return 'Shot for shot.';
    case 'reach':
    case 'racks':
    case 'last shot':
      return 'Once through, to the end.';
  }
}
