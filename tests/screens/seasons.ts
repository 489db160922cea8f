import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { isoWeekName } from '../../renderer/basics/days.ts';
import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { EMPTY_BOOK, type Round } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import type { Ingredient } from '../../renderer/pressure/ingredients.ts';
import type { ChokeIndex } from '../../renderer/stats/model/chokeIndex.ts';
import { studyOf } from '../../renderer/stats/study.ts';
import { shooterFigures, type Figures } from '../../renderer/store/figures.ts';
import { PLAIN, play } from '../bench/modelWorld.ts';

/* Records of several sizes with what the model makes of them, for the screens. */

export interface Season {
  readonly rounds: readonly Round[];
  readonly index: ChokeIndex;
  readonly figures: Figures;
}

/** A few draws are enough to be drawn. */
const DRAWS = 100;

/** @throws Error where the record has no index */
export function seasonOf(rounds: readonly Round[]): Season {
  const { index } = studyOf(rounds, { draws: DRAWS }).study;
  if (index.kind === 'none') throw new Error(`No index: ${index.reason}.`);
  const book = { ...EMPTY_BOOK, rounds: new Map(rounds.map((round) => [round.id, round])) };
  return { rounds, index, figures: shooterFigures(book, rounds[0]?.shooter ?? '') };
}

/** The invented season of the first shooter in it. */
export function demoRounds(): Round[] {
  const book = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
  const [shooter] = book.shooters.keys();
  return [...book.rounds.values()].filter((round) => round.shooter === shooter);
}

/** Weeks of one session each with two relaxed rounds and a pressured one, every spot in both. */
export function weeklyRounds(weeks: number): readonly Round[] {
  const plan = () => ['relaxed', 'pressured', 'relaxed'] as const;
  const world = { ...PLAIN, weeks, sessions: 1, plan, pressure: () => -0.4, skillRise: 0.05 };
  return play(world, rngFromSeed(7)).rounds;
}

/** Without the rounds of these weeks, by name; of `relaxedAlone` only the pressured ones go. */
export function without(
  rounds: readonly Round[],
  weeks: readonly string[],
  relaxedAlone: readonly string[] = [],
): Round[] {
  return rounds.filter(({ date, condition }) => {
    const week = isoWeekName(date);
    return !weeks.includes(week) && !(condition === 'pressured' && relaxedAlone.includes(week));
  });
}

/** The pressured rounds with these ingredients, taken in turn. */
export function turningOn(rounds: readonly Round[], turns: readonly (readonly Ingredient[])[]): Round[] {
  let turn = 0;
  return rounds.map((round) => {
    if (round.condition === 'relaxed') return round;
    const ingredients = turns[turn % turns.length] ?? [];
    turn += 1;
    const rest = { stake: null, mark: null, clock: null, crowd: false, showChance: true, seed: 1 };
    return { ...round, pressure: { ...rest, ingredients } };
  });
}

/** What a person reads, tags taken out. */
export function textOf(markup: string): string {
  return markup
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
}

export function count(text: string, part: string): number {
  return text.split(part).length - 1;
}
