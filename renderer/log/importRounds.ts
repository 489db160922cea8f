import type { NewId, RoundId, ShooterId } from '../basics/ids.ts';
import type { RuleSet } from '../court/ruleSets.ts';
import type { Book, Cell } from './book.ts';
import { shooterKey, type FileRound } from './csvRounds.ts';
import type { Body, Hand, Units } from './events.ts';
import type { Fact } from './facts.ts';
import { cellsHere, knownSpots, type KnownSpots } from './knownSpots.ts';
import { roundCells } from './roundCells.ts';
import { roundNames } from './roundNames.ts';

/** What taking a record file in would do. */
export interface Import {
  readonly facts: readonly Fact[];
  /** Rounds that would be added. */
  readonly rounds: number;
  /** Rounds that would take the place of one taken in before. */
  readonly replaced: number;
  /** Rounds the log already holds: shot in the app with the same shots, or taken in before with nothing changed. */
  readonly doubles: number;
  /**
   * Rounds taken in before under the same shooter, day, session and round, but with other shots, nerves, place in the
   * session, game or note: {@link Retold} says what becomes of them.
   */
  readonly retold: number;
  /** Added rounds that carry the name of a round shot in the app; both count. */
  readonly beside: number;
  readonly newShooters: readonly string[];
}

/** A round that is told differently is a correction of the first telling, or another round of the same name. */
export type Retold = 'replace' | 'keep-both';

/** How a shooter known only from a file is set up until they say otherwise. */
export interface ShooterDefaults {
  readonly hand: Hand;
  readonly rules: RuleSet;
  readonly units: Units;
}

/**
 * Plans the import of a read file: shooters and own spots are found by name, unknown shooters are added, and rounds
 * that are already there are left out, so that taking the same file in twice changes nothing. Rounds shot in the app
 * are never replaced.
 *
 * @param rounds each with a shooter, day, session and round of its own, as {@link FileRound}s of one file have
 */
export function planImport(
  book: Book,
  rounds: readonly FileRound[],
  newId: NewId,
  defaults: ShooterDefaults,
  retold: Retold = 'replace',
): Import {
  const facts: Fact[] = [];
  const shooters = shootersByName(book);
  const spots = knownSpots(book);
  const known = knownRounds(book, spots);
  const newShooters: string[] = [];
  const counts = { rounds: 0, replaced: 0, doubles: 0, retold: 0, beside: 0 };
  for (const { shooter: name, ...told } of rounds) {
    let shooter = shooters.get(shooterKey(name));
    if (!shooter) {
      shooter = newId<'shooter'>();
      shooters.set(shooterKey(name), shooter);
      newShooters.push(name);
      facts.push({ type: 'ShooterAdded', body: { shooter, name, ...defaults, demo: false } });
    }
    const round = { ...told, cells: cellsHere(told.cells, spots) };
    if (known.shots.has(shotsKey(shooter, round)) || known.told.has(toldKey(shooter, round))) {
      counts.doubles += 1;
      continue;
    }
    const title = titleKey(shooter, round);
    const before = known.imported.get(title);
    if (before) counts.retold += 1;
    else if (known.shotHere.has(title)) counts.beside += 1;
    const replaces = before !== undefined && retold === 'replace';
    counts[replaces ? 'replaced' : 'rounds'] += 1;
    const body: Body<'RoundImported'> = {
      round: replaces ? before : newId<'round'>(),
      shooter,
      ...round,
    };
    facts.push({ type: 'RoundImported', body });
  }
  return { facts, ...counts, newShooters };
}

function shootersByName(book: Book): Map<string, ShooterId> {
  const shooters = new Map<string, ShooterId>();
  for (const shooter of book.shooters.values()) {
    if (!book.removedShooters.has(shooter.id)) shooters.set(shooterKey(shooter.name), shooter.id);
  }
  return shooters;
}

interface Known {
  /** Rounds shot in the app, shot for shot: whatever else a file says of them, they stay as they were shot. */
  readonly shots: Set<string>;
  /** Imported rounds with all that a file tells. */
  readonly told: Set<string>;
  /** Imported rounds by their title. */
  readonly imported: Map<string, RoundId>;
  /** Titles of rounds shot in the app. */
  readonly shotHere: Set<string>;
}

/** Each round stands under its own name and under the one a file gives it. */
function knownRounds(book: Book, spots: KnownSpots): Known {
  const known: Known = { shots: new Set(), told: new Set(), imported: new Map(), shotHere: new Set() };
  for (const { round, session, label } of roundNames(book, book.rounds.values())) {
    const cells = cellsHere(roundCells(round), spots);
    for (const name of new Set([round.label, label])) {
      const named = { ...round, session, label: name, cells };
      if (round.imported) known.told.add(toldKey(round.shooter, named));
      else known.shots.add(shotsKey(round.shooter, named));
    }
    const title = titleKey(round.shooter, { ...round, session, label });
    if (round.imported) known.imported.set(title, round.id);
    else known.shotHere.add(title);
  }
  return known;
}

type Titled = Pick<FileRound, 'date' | 'session' | 'label'>;

function titleKey(shooter: ShooterId, { date, session, label }: Titled): string {
  return JSON.stringify([shooter, date, session, label]);
}

interface Shots extends Titled, Pick<FileRound, 'condition'> {
  readonly cells: readonly Cell[];
}

function shotsKey(shooter: ShooterId, round: Shots): string {
  const shots = round.cells
    .map(({ spot, shot, makes, attempts }) => [spot, shot, makes, attempts].join(' '))
    .toSorted();
  return JSON.stringify([titleKey(shooter, round), round.condition, shots]);
}

function toldKey(
  shooter: ShooterId,
  round: Shots & Pick<FileRound, 'game' | 'first' | 'nerves' | 'note'>,
): string {
  const { game, first, nerves, note } = round;
  return JSON.stringify([shotsKey(shooter, round), game, first, nerves, note]);
}
