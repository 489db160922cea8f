/*
 * The consequence ladder: what a pressured round leads to, from the lightest to the heaviest. Consequences raise pressure
 * more than hard tasks do (Stoker and others 2019), so they are raised one step at a time and have brakes.
 */

/**
 * Rungs, lightest first. `logged`: it goes on the record. `watched`: someone stands by. `filmed`: a friend films it.
 * `judged`: someone says afterwards how it looked. `forfeit`: something is on the line.
 */
export const RUNGS = ['logged', 'watched', 'filmed', 'judged', 'forfeit'] as const;
export type Rung = (typeof RUNGS)[number];

/** Who sees a round; each but `nobody` is a rung of its own. */
export const SEEN_BY = ['nobody', 'watched', 'filmed', 'judged'] as const;
export type SeenBy = (typeof SEEN_BY)[number];

/** Nerves from here on, with a result below its span, count as too much. Our own choice. */
export const HARD_NERVES = 8;

/** Good sessions on a rung before the next one is suggested. */
export const GOOD_SESSIONS = 2;

/** The rung a round stands on, by what it leads to. */
export function rungOf({ stake, seen }: { readonly stake: string | null; readonly seen: SeenBy }): Rung {
  if (stake !== null) return 'forfeit';
  return seen === 'nobody' ? 'logged' : seen;
}

/** Steps from one rung up to another; negative = down. */
export function stepsUp(from: Rung, to: Rung): number {
  return RUNGS.indexOf(to) - RUNGS.indexOf(from);
}

/** One session with pressured rounds, as the ladder sees it. */
export interface LadderSession {
  /** The highest rung of its rounds. */
  readonly rung: Rung;
  /** Nerves rose above the shooter's usual relaxed ones; null where that cannot be told. */
  readonly rose: boolean | null;
  /** The shot held; null where no round could tell. */
  readonly held: boolean | null;
  /** It was too much: the shooter said so, or nerves were very high and the result fell below its span. */
  readonly hurt: boolean;
}

/** Where a shooter stands. */
export interface Standing {
  /** The rung of the latest session. */
  readonly rung: Rung;
  /** Good sessions on it so far, up to {@link GOOD_SESSIONS}. */
  readonly good: number;
  readonly hurt: boolean;
}

/**
 * Where a shooter stands after these sessions; null before the first.
 *
 * A session is good where nerves rose and the shot held. One in which nerves rose and the shot did not hold ends the
 * count, and so does one on a lower rung or one that hurt; one that cannot tell, or in which nerves did not rise, counts
 * neither way.
 *
 * @param newestFirst read no further than needed
 */
export function standingOn(newestFirst: Iterable<LadderSession>): Standing | null {
  let standing: Standing | null = null;
  for (const session of newestFirst) {
    standing ??= { rung: session.rung, good: 0, hurt: session.hurt };
    if (session.hurt || stepsUp(standing.rung, session.rung) < 0) break;
    if (session.rose !== true || session.held === null) continue;
    if (!session.held) break;
    standing = { ...standing, good: standing.good + 1 };
    if (standing.good === GOOD_SESSIONS) break;
  }
  return standing;
}

/** What the shooter's body says before pressure is put on it. */
export interface BodyCheck {
  /** Sore or in pain. */
  readonly sore: boolean;
  readonly ill: boolean;
  /** Slept badly. */
  readonly unslept: boolean;
}

/** A brake: with any of them on, nothing goes up. */
export type Brake = keyof BodyCheck;
const BRAKES: readonly Brake[] = ['sore', 'ill', 'unslept'];

/** The brakes that are on. */
export function brakesOn(body: BodyCheck): Brake[] {
  return BRAKES.filter((brake) => body[brake]);
}

/** What the app suggests for today. */
export interface Suggestion {
  readonly rung: Rung;
  /** Against the latest session. */
  readonly move: 'first' | 'up' | 'stay' | 'down';
  /** A step up was earned, and a brake holds it back. */
  readonly heldBack: boolean;
}

/** One step down after a session that hurt, one step up after two good ones with no brake on, else the same again. */
export function suggestRung(standing: Standing | null, brakes: readonly Brake[]): Suggestion {
  if (standing === null) return { rung: RUNGS[0], move: 'first', heldBack: false };
  const at = RUNGS.indexOf(standing.rung);
  const below = RUNGS[at - 1];
  if (standing.hurt) {
    return { rung: below ?? standing.rung, move: below ? 'down' : 'stay', heldBack: false };
  }
  const above = standing.good >= GOOD_SESSIONS ? RUNGS[at + 1] : undefined;
  if (above === undefined) return { rung: standing.rung, move: 'stay', heldBack: false };
  if (brakes.length > 0) return { rung: standing.rung, move: 'stay', heldBack: true };
  return { rung: above, move: 'up', heldBack: false };
}

/**
 * The highest rung the app agrees to today. With a brake on it is the suggested one, which is never above the latest
 * session's; without one the shooter decides.
 */
export function highestRung(standing: Standing | null, brakes: readonly Brake[]): Rung {
  return brakes.length === 0 ? 'forfeit' : suggestRung(standing, brakes).rung;
}
