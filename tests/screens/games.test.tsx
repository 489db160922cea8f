import { beforeAll, describe, expect, it } from 'vitest';

import { CATALOGUE } from '../../renderer/games/catalogue.ts';
import type { Shooter } from '../../renderer/log/book.ts';
import type { GamePlan } from '../../renderer/pressure/gamePlan.ts';
import { GameOutlook } from '../../renderer/screens/games/GameOutlook.tsx';
import { GameRow } from '../../renderer/screens/games/GameRow.tsx';
import { FAMILIES } from '../../renderer/screens/games/priceWords.ts';
import { RuleForm } from '../../renderer/screens/games/RuleForm.tsx';
import { GameScreen } from '../../renderer/screens/GameScreen.tsx';
import { GameSetupScreen } from '../../renderer/screens/GameSetupScreen.tsx';
import { GamesScreen } from '../../renderer/screens/GamesScreen.tsx';
import { keepGame, gamesOf, type GameDraft } from '../../renderer/store/gameActions.ts';
import { gamePrices } from '../../renderer/store/gamePrices.ts';
import type { Gym } from '../../renderer/store/gymStore.ts';
import { freshPlan } from '../../renderer/games/newPlan.ts';
import { INES, onCourt } from '../log/diary.ts';
import { drawn, openGym } from '../tools/onScreen.tsx';
import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { count, textOf } from './seasons.ts';

const HOSTILE: GameDraft = {
  name: '<img src=x onerror=alert(1)>',
  stops: [{ spot: '<b>Bleachers</b>', shot: 'catch', attempts: 5 }],
  plan: { family: 'streak', row: 5, most: 60 },
  clock: null,
  crowd: true,
};

let gym: Gym;
let ines: Shooter;
let own = '';
beforeAll(async () => {
  gym = await openGym(demoSeason('2026-11-25', 60, 'device', 1));
  const [first] = gym.store.getState().book.shooters.values();
  if (!first) throw new Error('no shooter');
  ines = first;
  own = (await keepGame(gym, HOSTILE, null)) ?? '';
});
const prices = () => gamePrices(gym.store.getState().book, ines.id, gym.moment());

describe('the list of games', () => {
  it('has every game under its kind, the shooter’s own first', () => {
    const markup = drawn(gym, <GamesScreen shooter={ines} />);
    expect(count(markup, '<h3>')).toBe(31);
    const headings = [...markup.matchAll(/<h2[^>]*>([^<]*)</g)].map(([, words]) => words);
    expect(headings.slice(0, 2)).toEqual(['Your own', 'So many makes']);
    expect(headings).toHaveLength(1 + FAMILIES.length + 1);
    for (const { name } of CATALOGUE) expect(textOf(markup)).toContain(name);
  });

  it('tells of each game what it is, its chance and its length, and how to play it', () => {
    const game = gamesOf(gym.store.getState().book).find(({ id }) => id === 'streak-line');
    if (!game) throw new Error('no such game');
    const price = { ...prices().price(game), chance: 0.46, length: { mean: 42, ninetieth: 85, most: 100 } };
    const markup = drawn(gym, <GameRow game={game} price={price} onSaid={() => undefined} />);
    const text = textOf(markup);
    expect(text).toContain('Ten in a row at the line Shoot free throws until ten in a row go in');
    expect(text).toContain('42 shots on average, one time in ten over 85. 46 wins in 100');
    expect(markup).toContain('href="#/pressured/streak-line"');
    expect(markup).toContain('href="#/game/streak-line"');
    expect(text).not.toContain('Remove');
  });

  it('offers nothing to play while a round is open', async () => {
    const busy = await openGym(onCourt().events);
    const shooter = { ...ines, id: INES.shooter };
    expect(drawn(busy, <GamesScreen shooter={shooter} />)).not.toContain('href="#/pressured/');
  });

  it('shows a name from a stranger as words, whatever they are', () => {
    for (const screen of [
      <GamesScreen key="list" shooter={ines} />,
      <GameScreen key="game" shooter={ines} about={own} />,
      <GameSetupScreen key="setup" shooter={ines} about={own} />,
    ]) {
      const markup = drawn(gym, screen);
      expect(markup).toContain('&lt;img src=x onerror=alert(1)&gt;');
      expect(markup).not.toContain('<img');
      expect(markup).not.toContain('<b>Bleachers');
    }
  });
});

describe('the making of a game', () => {
  it('begins from a built-in game without its name, and from one’s own with it', () => {
    expect(drawn(gym, <GameScreen shooter={ines} about="race-line" />)).toContain('value=""');
    const markup = drawn(gym, <GameScreen shooter={ines} about={own} />);
    expect(textOf(markup)).toContain('Change &lt;img');
    expect(textOf(markup)).toContain('Keep the change');
  });

  it('shows chance and length at once', () => {
    const text = textOf(drawn(gym, <GameScreen shooter={ines} about="streak-line" />));
    expect(text).toMatch(
      /Make 10 in a row to win, within 100 shots\. \d+ wins in 100 at your rate \d+ shots on average/,
    );
    expect(text).toContain('Play it once now');
  });

  it('says in a sentence why a game cannot be played, and then cannot play it', () => {
    const plan: GamePlan = { family: 'streak', row: 9, most: 8 };
    const game = { plan, stops: HOSTILE.stops, clock: null };
    const text = textOf(drawn(gym, <GameOutlook game={game} prices={prices()} />));
    expect(text).toBe('A run of 9 does not fit into 8 shots. Allow more shots, or ask for a shorter run.');
  });

  it.each(FAMILIES)('has the numbers of %s, each with its name', (family) => {
    const stops = CATALOGUE.find(({ plan }) => plan.family === family)?.stops ?? [];
    const markup = drawn(
      gym,
      <RuleForm plan={freshPlan(family, stops)} stops={stops} onChange={() => undefined} />,
    );
    const labels = [...markup.matchAll(/role="group" aria-label="([^"]+)"/g)].map(([, label]) => label);
    expect(labels.length).toBeGreaterThan(0);
    expect(new Set(labels).size).toBe(labels.length);
  });
});

describe('a game set up', () => {
  it('stands in place of card and mark, with how hard it should be', () => {
    const text = textOf(drawn(gym, <GameSetupScreen shooter={ines} about="streak-line" />));
    expect(text).toContain('How hard should it be?');
    expect(text).toContain('Make 10 in a row to win, within 100 shots.');
    expect(text).toContain('Free-throw line × 10.');
    expect(text).not.toContain('Which card?');
    expect(text).not.toContain('The mark to beat');
    expect(text).not.toContain('How do you keep count?');
  });

  it('shows the scene of a trip to the line', () => {
    const text = textOf(drawn(gym, <GameSetupScreen shooter={ines} about="trip-down-one" />));
    expect(text).toContain('Down one, 0:03, two shots');
    expect(textOf(drawn(gym, <GameSetupScreen shooter={ines} about="trip-level" />))).toContain(
      'Level, 0.0, two',
    );
  });

  it('brings its own clock: last shots one that nobody can set, with the rule of the last moment', () => {
    const text = textOf(drawn(gym, <GameSetupScreen shooter={ines} about="last-top" />));
    expect(text).toContain('Each shot starts anywhere from 2 to 5 seconds');
    expect(text).toContain(`Under ${ines.rules} rules a catch and a shot need`);
    expect(text).not.toContain('Which clock?');
    const racks = textOf(drawn(gym, <GameSetupScreen shooter={ines} about="racks-minute" />));
    expect(racks).toContain('60 s');
    expect(racks).toMatch(/At your pace of \d+ s a shot time is left for about \d+ of 25 shots/);
  });

  it('says so where the game is gone', () => {
    const text = textOf(drawn(gym, <GameSetupScreen shooter={ines} about="of another device" />));
    expect(text).toContain('This game is gone');
    expect(text).toContain('To the games');
  });
});
