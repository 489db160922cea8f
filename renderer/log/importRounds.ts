import type { NewId, ShooterId } from '../basics/ids.ts';
import type { Book, Round, Shooter } from './book.ts';
import type { FileRound } from './csvRead.ts';
import type { Body, Hand, Units } from './events.ts';
import type { Fact } from './facts.ts';
import { roundCells } from './roundCells.ts';
import type { RuleSet } from '../court/ruleSets.ts';

/** What taking a record file in would do. */
export interface Import {
  readonly facts: readonly Fact[];
  readonly rounds: number;
  readonly newShooters: readonly string[];
  /** Rounds the log already holds, word for word. */
  readonly doubles: number;
}

/** How a shooter known only from a file is set up until they say otherwise. */
export interface ShooterDefaults {
  readonly hand: Hand;
  readonly rules: RuleSet;
  readonly units: Units;
}

/**
 * Plans the import of a read file: shooters are found by name, unknown ones are added, and rounds that are already
 * there are left out, so that taking the same file in twice changes nothing.
 */
export function planImport(
  book: Book,
  rounds: readonly FileRound[],
  newId: NewId,
  defaults: ShooterDefaults,
): Import {
  const facts: Fact[] = [];
  const shooters = new Map<string, ShooterId>();
  for (const shooter of book.shooters.values()) {
    if (!book.removedShooters.has(shooter.id)) shooters.set(nameKey(shooter.name), shooter.id);
  }
  const known = new Set<string>();
  for (const round of book.rounds.values()) known.add(knownKey(book, round));

  const newShooters: string[] = [];
  let doubles = 0;
  for (const { shooter: name, ...round } of rounds) {
    let shooter = shooters.get(nameKey(name));
    if (!shooter) {
      shooter = newId<'shooter'>();
      shooters.set(nameKey(name), shooter);
      newShooters.push(name);
      facts.push({ type: 'ShooterAdded', body: { shooter, name, ...defaults, demo: false } });
    }
    const key = fileKey(shooter, round);
    if (known.has(key)) {
      doubles += 1;
      continue;
    }
    known.add(key);
    const body: Body<'RoundImported'> = {
      round: newId<'round'>(),
      shooter,
      ...round,
      cells: [...round.cells],
    };
    facts.push({ type: 'RoundImported', body });
  }
  return { facts, rounds: rounds.length - doubles, newShooters, doubles };
}

/** Names are the same whatever their case and outer blanks. */
function nameKey(name: Shooter['name']): string {
  return name.trim().toLocaleLowerCase('en').normalize('NFC');
}

type Keyed = Pick<FileRound, 'date' | 'session' | 'label' | 'condition' | 'cells'>;

function fileKey(shooter: ShooterId, { date, session, label, condition, cells }: Keyed): string {
  const shots = cells
    .map(({ spot, shot, makes, attempts }) => [spot, shot, makes, attempts].join(' '))
    .toSorted();
  return JSON.stringify([shooter, date, session, label, condition, shots]);
}

function knownKey(book: Book, round: Round): string {
  const session = book.sessions.get(round.session)?.label ?? round.session;
  return fileKey(round.shooter, { ...round, session, cells: roundCells(round) });
}
