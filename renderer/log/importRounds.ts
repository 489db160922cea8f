import type { NewId, RoundId, ShooterId } from '../basics/ids.ts';
import type { RuleSet } from '../court/ruleSets.ts';
import type { Book, Round, Shooter } from './book.ts';
import type { FileRound } from './csvRounds.ts';
import type { Body, Hand, Units } from './events.ts';
import type { Fact } from './facts.ts';
import { roundCells } from './roundCells.ts';
import { roundNames } from './roundNames.ts';

/** What taking a record file in would do. */
export interface Import {
  readonly facts: readonly Fact[];
  /** Rounds that would be added. */
  readonly rounds: number;
  /** Rounds that would take the place of one taken in before. */
  readonly replaced: number;
  /** Rounds the log already holds, shot for shot. */
  readonly doubles: number;
  /**
   * Rounds taken in before under the same shooter, day, session and round, but with other shots: {@link Retold} says
   * what becomes of them.
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
 * Plans the import of a read file: shooters are found by name, unknown ones are added, and rounds that are already
 * there are left out, so that taking the same file in twice changes nothing. Rounds shot in the app are never replaced.
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
  const known = knownRounds(book);
  const newShooters: string[] = [];
  const counts = { rounds: 0, replaced: 0, doubles: 0, retold: 0, beside: 0 };
  for (const { shooter: name, ...round } of rounds) {
    let shooter = shooters.get(nameKey(name));
    if (!shooter) {
      shooter = newId<'shooter'>();
      shooters.set(nameKey(name), shooter);
      newShooters.push(name);
      facts.push({ type: 'ShooterAdded', body: { shooter, name, ...defaults, demo: false } });
    }
    const shots = shotsKey(shooter, round);
    if (known.shots.has(shots)) {
      counts.doubles += 1;
      continue;
    }
    known.shots.add(shots);
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
      cells: [...round.cells],
    };
    facts.push({ type: 'RoundImported', body });
  }
  return { facts, ...counts, newShooters };
}

function shootersByName(book: Book): Map<string, ShooterId> {
  const shooters = new Map<string, ShooterId>();
  for (const shooter of book.shooters.values()) {
    if (!book.removedShooters.has(shooter.id)) shooters.set(nameKey(shooter.name), shooter.id);
  }
  return shooters;
}

/** Names are the same whatever their case and outer blanks. */
function nameKey(name: Shooter['name']): string {
  return name.trim().toLocaleLowerCase('en').normalize('NFC');
}

interface Known {
  /** Every round shot for shot, under its own name and under the one a file gives it. */
  readonly shots: Set<string>;
  /** Imported rounds by their title. */
  readonly imported: Map<string, RoundId>;
  /** Titles of rounds shot in the app. */
  readonly shotHere: Set<string>;
}

function knownRounds(book: Book): Known {
  const known: Known = { shots: new Set(), imported: new Map(), shotHere: new Set() };
  for (const { round, session, label } of roundNames(book, book.rounds.values())) {
    const cells = roundCells(round);
    for (const name of new Set([round.label, label])) {
      known.shots.add(shotsKey(round.shooter, { ...round, session, label: name, cells }));
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

function shotsKey(
  shooter: ShooterId,
  round: Titled & Pick<Round & FileRound, 'condition' | 'cells'>,
): string {
  const shots = round.cells
    .map(({ spot, shot, makes, attempts }) => [spot, shot, makes, attempts].join(' '))
    .toSorted();
  return JSON.stringify([titleKey(shooter, round), round.condition, shots]);
}
