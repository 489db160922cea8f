import type { Seconds } from '../basics/units.ts';
import { attemptsOn, type Stop } from '../court/cards.ts';
import type { DuelSide } from '../games/duelFace.ts';
import type { Face } from '../games/face.ts';
import type { Verdict } from '../games/played.ts';
import type { GamePlan } from '../pressure/gamePlan.ts';
import { writeClock } from '../store/court.ts';
import { signed } from './numberWords.ts';

/* What is said of games: what wins one, how it stands, how it came out. */

/** What wins the game, as it is told before the first shot. */
export function goalWords(plan: GamePlan, card: readonly Stop[]): string {
  const shots = attemptsOn(card);
  switch (plan.family) {
    case 'reach':
      return `Make ${plan.needed} of ${shots} to win`;
    case 'last shot':
      return `Make ${plan.needed} of ${shots} last shots to win, each from a clock of its own`;
    case 'streak':
      return `Make ${plan.row} in a row to win, within ${plan.most} shots`;
    case 'race':
      return raceWords(plan);
    case 'lives':
      return `Make ${plan.needed} before ${counted(plan.lives, 'miss', 'misses')} to win`;
    case 'trips':
      return `${counted(plan.needed, 'point')} in ${counted(plan.trips, 'trip')} to the line to win`;
    case 'racks':
      return plan.double === 'none'
        ? `${counted(plan.needed, 'point')} to win`
        : `${counted(plan.needed, 'point')} to win; some balls count double and are announced`;
    case 'climb':
      return `Climb ${counted(card.length, 'step')} to win, within ${plan.most} shots`;
    case 'duel':
      return duelWords(plan, shots);
  }
}

function raceWords({ to, up, down, lost, most }: Extract<GamePlan, { family: 'race' }>): string {
  const miss = down === 0 ? 'a miss nothing' : `a miss takes ${down}`;
  const end = lost === null ? '' : `, ${signed(lost)} loses`;
  return `A make brings ${up}, ${miss}: ${to} wins${end}, within ${most} shots`;
}

function duelWords(plan: Extract<GamePlan, { family: 'duel' }>, shots: number): string {
  const alone = plan.against.kind !== 'shooter';
  const ahead = Math.abs(plan.headStart);
  const start = ((): string => {
    if (ahead === 0) return '';
    if (alone) return `; you start ${ahead} ${plan.headStart > 0 ? 'ahead' : 'behind'}`;
    return `; ${plan.headStart > 0 ? 'the first shooter' : 'the other'} starts ${ahead} ahead`;
  })();
  return `Shot for shot, ${shots} each: more makes win${start}`;
}

/** How a game stands, in the fewest words: `best run 6 of 10`. */
export function standingWords({ game, over, won }: Face): string {
  const stands = ((): string => {
    switch (game.family) {
      case 'reach':
      case 'last shot':
        return `${game.made} of ${game.goal} needed`;
      case 'streak':
        return over ? `best run ${game.best} of ${game.goal}` : `${game.row} in a row, best ${game.best}`;
      case 'race':
        return `${signed(game.score)} of ${game.goal} points`;
      case 'lives':
        return `${game.made} of ${game.goal}, ${counted(game.lives, 'life', 'lives')}`;
      case 'trips':
      case 'racks':
        return `${game.points} of ${counted(game.goal, 'point')}`;
      case 'climb':
        return `step ${game.step} of ${game.of}`;
      case 'duel':
        return `${game.sides[game.own].score} to ${game.sides[game.own === 0 ? 1 : 0].score}`;
    }
  })();
  if (!over) return stands;
  return won ? `won, ${stands}` : `out, ${stands}`;
}

/** How far a game that is over had come, whether it was won, lost or left: `best run 6 of 10`. */
export function outcomeWords({ game }: Face): string {
  switch (game.family) {
    case 'reach':
    case 'last shot':
      return `${game.made} made, ${game.goal} needed`;
    case 'streak':
      return `best run ${game.best} of ${game.goal}`;
    case 'race':
      return `${signed(game.score)} points, ${game.goal} needed`;
    case 'lives':
      return game.needed === 0
        ? `${game.made} made with ${counted(game.lives, 'life', 'lives')} left`
        : `${game.made} made of ${game.goal}, ${game.lives === 0 ? 'no life' : counted(game.lives, 'life', 'lives')} left`;
    case 'trips':
    case 'racks':
      return `${counted(game.points, 'point')}, ${game.goal} needed`;
    case 'climb':
      return game.top
        ? `all ${counted(game.of, 'step')} climbed`
        : `as far as step ${game.step} of ${game.of}`;
    case 'duel':
      return `${scoreWords(game.sides[game.own])} to ${scoreWords(game.sides[game.own === 0 ? 1 : 0])}`;
  }
}

function scoreWords({ score, headStart }: DuelSide): string {
  return headStart === 0 ? String(score) : `${score} (${headStart} from the start)`;
}

/** How a game came out, as a title. */
export const GAME_TITLES: Readonly<Record<Verdict, string>> = {
  open: 'Still playing',
  beaten: 'You won',
  short: 'Not this time',
  level: 'Level: nobody won',
  stopped: 'You ended it early',
  void: 'The round was interrupted',
};

/** How a game came out, as one word in a list. */
export const GAME_VERDICTS: Readonly<Record<Verdict, string>> = {
  open: 'not played out',
  beaten: 'won',
  short: 'lost',
  level: 'level',
  stopped: 'stopped, no game',
  void: 'interrupted, no game',
};

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** The score and the time of a trip's scene: `Down one, 0:03`. @param margin points ahead, below 0 behind */
export function sceneWords(margin: number, left: Seconds): string {
  const by = ['Level', 'one', 'two', 'three'][Math.abs(margin)] ?? String(Math.abs(margin));
  const score = margin === 0 ? by : `${margin < 0 ? 'Down' : 'Up'} ${by}`;
  return `${score}, ${sceneClock(left)}`;
}

/** Time as a scoreboard has it at the end of a game: `0:03`, below a second `0.4`. */
function sceneClock(left: Seconds): string {
  return left < 1
    ? writeClock(left)
    : `${Math.floor(left / 60)}:${String(Math.floor(left % 60)).padStart(2, '0')}`;
}
