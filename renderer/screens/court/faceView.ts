import type { Face } from '../../games/face.ts';
import type { GameFace } from '../../games/gameFace.ts';
import { sceneWords } from '../gameWords.ts';
import { signed } from '../numberWords.ts';

/* The face of a game as it is read at eight metres: a few large figures, and a word to be seen before the shot. */

export interface BigFigure {
  readonly value: string;
  readonly words: string;
  /** So many filled discs of so many: lives. */
  readonly discs?: { readonly filled: number; readonly of: number };
}

/** Words over the whole width. Their place is kept all game long, so that nothing moves under a finger. */
export interface LoudWords {
  readonly words: string;
  /** To be heeded now. */
  readonly strong: boolean;
}

export interface FaceView {
  /** Which shot comes next, in small. */
  readonly shot: string;
  /** The most important one first. */
  readonly figures: readonly BigFigure[];
  readonly loud: LoudWords | null;
}

export function faceView({ game, shots }: Face): FaceView {
  const next = Math.min(shots.next, shots.most);
  return {
    shot: shotWords(game, next, shots.most, shots.fixed),
    figures: figuresOf(game),
    loud: loudOf(game),
  };
}

function shotWords(game: GameFace, next: number, most: number, fixed: boolean): string {
  if (game.family === 'racks') {
    return `rack ${game.rack} of ${game.of}, ball ${game.ball} of ${game.balls}`;
  }
  if (game.family === 'duel') {
    return game.extra === null ? `shot ${Math.min(next, game.each)} of ${game.each}` : 'an extra pair';
  }
  return fixed ? `shot ${next} of ${most}` : `shot ${next}, at most ${most}`;
}

function figuresOf(game: GameFace): BigFigure[] {
  switch (game.family) {
    case 'reach':
    case 'last shot':
      return [neededOf(game, 'needed')];
    case 'streak':
      return [
        { value: String(game.row), words: `in a row, of ${game.goal}` },
        { value: String(game.best), words: 'best run' },
        { value: String(game.left), words: game.left === 1 ? 'shot left' : 'shots left' },
      ];
    case 'race':
      return [
        { value: signed(game.score), words: `of ${game.goal} points` },
        ...(game.lost === null ? [] : [{ value: signed(game.lost), words: 'lost there' }]),
        { value: String(game.left), words: game.left === 1 ? 'shot left' : 'shots left' },
      ];
    case 'lives':
      return [
        { value: String(game.needed), words: game.needed === 1 ? 'make needed' : 'makes needed' },
        {
          value: String(game.lives),
          words: game.lives === 1 ? 'life left' : 'lives left',
          discs: { filled: game.lives, of: game.of },
        },
      ];
    case 'trips':
      return [
        { value: String(game.needed), words: game.needed === 1 ? 'point needed' : 'points needed' },
        { value: String(game.trip), words: game.of === 1 ? 'trip' : `trip of ${game.of}` },
        {
          value: String(game.shot),
          words: game.mustMake ? 'must go in' : `shot of ${game.shots}`,
        },
      ];
    case 'racks':
      return [neededOf(game, 'points needed')];
    case 'climb':
      return [
        { value: String(game.step), words: `step of ${game.of}` },
        { value: `${game.made}/${game.goal}`, words: 'made on this step' },
        { value: String(game.stepLeft), words: game.stepLeft === 1 ? 'shot left here' : 'shots left here' },
      ];
    case 'duel': {
      const value = String(Math.abs(game.ahead));
      const words = game.ahead === 0 ? 'level' : game.ahead > 0 ? 'ahead' : 'behind';
      const left = game.sides[game.own].left;
      return [
        { value, words },
        game.extra === null
          ? { value: String(left), words: left === 1 ? 'shot left' : 'shots left' }
          : { value: String(game.extra), words: `extra pair of ${game.extraPairs}` },
      ];
    }
  }
}

/** What is needed, and whether what is left can bring it. */
function neededOf({ needed, left }: { needed: number; left: number }, words: string): BigFigure {
  const value = String(needed);
  if (needed === 0) return { value, words: 'goal reached' };
  if (needed > left) return { value, words: `${words}, ${left} left: out of reach` };
  return { value, words: `${words} of ${left} left` };
}

function loudOf(game: GameFace): LoudWords | null {
  if (game.family === 'racks' && game.doubles) {
    return game.worth === 2 ? { words: 'Double', strong: true } : { words: 'Single', strong: false };
  }
  if (game.family !== 'trips' || game.scene === null) return null;
  return { words: sceneWords(game.scene.margin, game.scene.left), strong: false };
}
