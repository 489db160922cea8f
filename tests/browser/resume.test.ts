import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';

import { rngFromSeed } from '../../renderer/basics/chance.ts';
import type { Round } from '../../renderer/log/book.ts';
import { freshProfile, removeProfile, startKillable } from '../tools/browser.ts';
import { readCourt } from '../tools/court.ts';
import { keys } from '../tools/hands.ts';
import { playUntilKilled } from '../tools/kill.ts';
import { copyLog } from '../tools/savedFile.ts';
import { Shooter } from '../tools/shooter.ts';

const KILLS = 25;
const SEED = 25;
/** Longest time from the first shot that counts to the kill; a shot by keyboard takes some milliseconds. */
const LONGEST_MS = 150;
/** The whole card. */
const SHOTS = 45;
/** With fewer shots left, a round is finished and another begun. */
const ENOUGH = 10;

const url = inject('appUrl');
const rng = rngFromSeed(SEED);

/** What is shot in every round, known before it is shot. */
const plan: string[] = [];
const planOf = (round: number): string =>
  (plan[round] ??= Array.from({ length: SHOTS }, () => (rng.chance(0.5) ? '●' : '○')).join(''));

let profile: string;
beforeAll(async () => {
  profile = await freshProfile();
});
afterAll(() => removeProfile(profile));

/** Runs in the page: tells of every shot that the figures begin to count, as the number they count. */
function watchFigures(shots: number): void {
  const counted = (): number => {
    if (document.querySelector('h1')?.textContent === 'Round over') return shots;
    const words = document.querySelector('.going-on dt')?.textContent ?? '';
    return Number(/^made of (\d+)$/.exec(words)?.[1] ?? 0);
  };
  let told = counted();
  new MutationObserver(() => {
    if (counted() <= told) return;
    told = counted();
    window.acknowledged?.(told);
  }).observe(document.body, { subtree: true, childList: true, characterData: true });
}

/** The round being played, from 0, and how many of its shots stood in the log when it was last looked at. */
let round = -1;
let shots = SHOTS;

async function startRound(rae: Shooter): Promise<void> {
  round += 1;
  shots = 0;
  await rae.setUp('Relaxed round', { card: 'The whole card', nerves: 0 });
}

/**
 * Looks at the bench after a kill, and goes to the court.
 *
 * @param counted shots of the round that the figures had counted
 * @returns whether the round had been cut short
 */
async function lookAfter(rae: Shooter, counted: number): Promise<boolean> {
  await rae.sees('Rae');
  const goOn = rae.link(/^Go on at shot \d+$/);
  const open = (await goOn.count()) > 0;
  shots = open ? Number(/\d+$/.exec(await goOn.innerText())?.[0]) - 1 : SHOTS;
  expect(shots, `shots on record in round ${round}`).toBeGreaterThanOrEqual(counted);
  if (!open) return false;
  await rae.hands.press(goOn);
  await expect
    .poll(() => readCourt(rae.page))
    .toMatchObject({
      shot: shots + 1,
      figures: { [`made of ${shots}`]: String(planOf(round).slice(0, shots).replaceAll('○', '').length) },
    });
  return true;
}

/** Shoots the rest of the round. */
async function shootOn(rae: Shooter): Promise<void> {
  await rae.go();
  await rae.shoot(planOf(round).slice(shots));
}

const written = ({ entries }: Round): string =>
  entries.map((entry) => (entry.kind === 'shot' && entry.made ? '●' : '○')).join('');

test(`shots that counted outlive ${KILLS} kills in the middle of a round, and it goes on at the right shot`, async ({
  annotate,
}) => {
  let counted: number | null = null;
  let inTheMiddle = 0;
  let all = 0;

  const look = async (page: Page): Promise<void> => {
    const rae = new Shooter(page, keys(page));
    if (counted === null) await rae.begin(url, 'Rae');
    else if (await lookAfter(rae, counted)) {
      inTheMiddle += 1;
      if (SHOTS - shots >= ENOUGH) return;
      await shootOn(rae);
      await rae.done();
      await rae.follow(/Bench$/);
    }
    await startRound(rae);
  };
  const play = async (page: Page): Promise<void> => {
    await page.evaluate(watchFigures, SHOTS);
    await shootOn(new Shooter(page, keys(page)));
    // Shot out before the kill: it is waited for.
    await new Promise(() => undefined);
  };

  const enough = (): boolean => inTheMiddle === KILLS;
  for (let kills = 0; !enough(); kills += 1) {
    expect(kills, 'kills, with those between two rounds').toBeLessThan(2 * KILLS);
    const told = await playUntilKilled<number>(
      profile,
      { url: `${url}#/bench`, look, play },
      rng.next() * LONGEST_MS,
    );
    counted = told.at(-1) ?? 0;
    all += told.length;
  }

  const browser = await startKillable(profile);
  try {
    const page = await browser.context.newPage();
    await page.goto(`${url}#/bench`);
    const rae = new Shooter(page, keys(page));
    await lookAfter(rae, counted ?? 0);
    const { book } = await copyLog(rae);
    const rounds = [...book.rounds.values(), ...(book.open ? [book.open] : [])];
    expect(rounds.map(written)).toEqual(
      rounds.map((_, at) => planOf(at).slice(0, at < round ? SHOTS : shots)),
    );
    expect(rounds).toHaveLength(round + 1);
  } finally {
    await browser.kill();
  }
  await annotate(`${KILLS} kills in ${round + 1} rounds; of ${all} shots that counted none was lost`);
});
