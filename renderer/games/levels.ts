import { invariant } from '../basics/invariant.ts';
import type { Rule } from './rule.ts';

/** The states a game can be in after one number of turns. */
export interface Level<State> {
  readonly states: readonly State[];
  /** Which shot comes next; −1 for a finished state. */
  readonly shot: readonly number[];
  /** Index in the next level after a make and after a miss; −1 for a finished state. */
  readonly make: readonly number[];
  readonly miss: readonly number[];
}

const found = new WeakMap<object, readonly Level<unknown>[]>();

/**
 * Every state that can be reached, turn by turn. A rule never changes, so they are found once: on a clock that runs the
 * same rule is solved anew after every shot.
 *
 * @throws InvariantError where the game goes on beyond its longest play
 */
export function levelsOf<State>(rule: Rule<State>): readonly Level<State>[] {
  const before = found.get(rule);
  if (before) return before as readonly Level<State>[];
  const levels = findLevels(rule);
  found.set(rule, levels);
  return levels;
}

function findLevels<State>(rule: Rule<State>): Level<State>[] {
  const levels: Level<State>[] = [];
  let states = [rule.start];
  while (states.length > 0) {
    const next: State[] = [];
    const nextIndex = new Map<number | string, number>();
    const place = (state: State): number => {
      const key = rule.key(state);
      const known = nextIndex.get(key);
      if (known !== undefined) return known;
      nextIndex.set(key, next.length);
      next.push(state);
      return next.length - 1;
    };
    const [shot, make, miss]: [number[], number[], number[]] = [[], [], []];
    for (const state of states) {
      const over = rule.finished(state);
      shot.push(over ? -1 : rule.shot(state));
      make.push(over ? -1 : place(rule.step(state, true)));
      miss.push(over ? -1 : place(rule.step(state, false)));
    }
    levels.push({ states, shot, make, miss });
    invariant(levels.length <= rule.longest + 1, 'a game that ends');
    states = next;
  }
  return levels;
}
