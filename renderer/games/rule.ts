/**
 * A game as a small state machine over makes and misses. From this alone the solver gives the chance of winning
 * before the round, after every shot, and how much the next shot matters.
 *
 * Laws: a finished state never changes; states with equal keys have equal futures; every play ends within
 * `longest` turns; the end of time ends it wherever it stands.
 */
export interface Rule<State> {
  readonly start: State;
  /** The state after the next turn. Not called on a finished state. */
  step(state: State, made: boolean): State;
  finished(state: State): boolean;
  /** Whether the game is won if it ends here, shot out or out of time. */
  won(state: State): boolean;
  /** Which of the game's shots comes next, as the shooter's make rates are counted. Not called on a finished state. */
  shot(state: State): number;
  /** Equal for states with equal futures after the same number of turns. */
  key(state: State): number | string;
  /** Most turns a play can take. */
  readonly longest: number;
}

/** What one turn brought: a turn the shot clock took counts as a miss in the game, but says nothing of the shooter. */
export type TurnResult = 'make' | 'miss' | 'lost';
