import type { ShooterId } from '../basics/ids.ts';
import { demoSeason } from '../games/demoSeason.ts';
import type { Book, Shooter } from '../log/book.ts';
import type { Gym } from './gymStore.ts';
import { todayAt } from './today.ts';

/* Who shoots on this device. */

type ShooterFields = Pick<Shooter, 'name' | 'hand' | 'rules' | 'units'>;

/** Everyone shown on this device, in the order they were added. */
export function shootersOf(book: Book): Shooter[] {
  return [...book.shooters.values()].filter((shooter) => !book.removedShooters.has(shooter.id));
}

/** Why a shooter cannot be called that, in a sentence; null where nothing speaks against it. @param id who is renamed */
export function nameFault(book: Book, name: string, id?: ShooterId): string | null {
  const wanted = name.trim();
  if (wanted === '') return 'Please give a name, so that your shots are kept under it.';
  const taken = shootersOf(book).some(
    (other) => other.id !== id && other.name.toLowerCase() === wanted.toLowerCase(),
  );
  return taken ? `There is already a shooter called ${wanted} here. Choose another name.` : null;
}

/**
 * Adds a shooter and brings them to the bench.
 *
 * @param under18 null where nobody told
 */
export async function addShooter(
  gym: Gym,
  fields: ShooterFields,
  under18: boolean | null = null,
): Promise<boolean> {
  const shooter = gym.moment().newId<'shooter'>();
  const saved = await gym.dispatch([
    { type: 'ShooterAdded', body: { shooter, ...fields, demo: false } },
    ...(under18 === null ? [] : [{ type: 'AgeTold', body: { shooter, under18 } } as const]),
  ]);
  if (saved) gym.set({ shooter });
  return saved;
}

/** Adds somebody who plays along on the host's court; whoever is at the bench stays there. @returns null where not saved */
export async function addGuest(gym: Gym, name: string, host: Shooter): Promise<ShooterId | null> {
  const shooter = gym.moment().newId<'shooter'>();
  const { rules, units } = host;
  const fields = { name: name.trim(), hand: 'right', rules, units, demo: false } as const;
  return (await gym.dispatch([{ type: 'ShooterAdded', body: { shooter, ...fields } }])) ? shooter : null;
}

export function changeShooter(gym: Gym, shooter: ShooterId, fields: ShooterFields): Promise<boolean> {
  return gym.dispatch([{ type: 'ShooterChanged', body: { shooter, ...fields } }]);
}

/** Takes a shooter off the screens; the log keeps what it holds. */
export async function removeShooter(gym: Gym, shooter: ShooterId): Promise<boolean> {
  const saved = await gym.dispatch([{ type: 'ShooterRemoved', body: { shooter } }]);
  const { book, settings } = gym.store.getState();
  if (saved && settings.shooter === shooter) gym.set({ shooter: shootersOf(book)[0]?.id ?? null });
  return saved;
}

/** Writes the invented season into the log and brings its first shooter to the bench. */
export async function loadDemoSeason(gym: Gym): Promise<boolean> {
  const { settings } = gym.store.getState();
  const events = demoSeason(todayAt(gym), gym.moment().zone, settings.device, gym.newSeed());
  const saved = await gym.append(events);
  const first = events.find((event) => event.type === 'ShooterAdded');
  if (saved && first?.type === 'ShooterAdded') gym.set({ shooter: first.body.shooter });
  return saved;
}

/** Takes everyone of the invented season off the screens. */
export async function removeDemoSeason(gym: Gym): Promise<boolean> {
  const { book } = gym.store.getState();
  const demo = shootersOf(book).filter((shooter) => shooter.demo);
  const saved = await gym.dispatch(demo.map(({ id }) => ({ type: 'ShooterRemoved', body: { shooter: id } })));
  if (saved) gym.set({ shooter: shootersOf(gym.store.getState().book)[0]?.id ?? null });
  return saved;
}
