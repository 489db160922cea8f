import { test } from 'vitest';

import { roundTally } from '../../renderer/log/roundCells.ts';
import { atBench } from '../tools/atBench.ts';
import { readCourt } from '../tools/court.ts';
import { copyLog } from '../tools/savedFile.ts';
import type { Shooter } from '../tools/shooter.ts';

/* Counts for each spot, and what happens when a clock runs out. Mostly waiting, so the tests run beside each other. */

const says = (shooter: Shooter, words: string | RegExp): Promise<void> =>
  shooter.page.getByText(words).first().waitFor();

/** The first round in the log, by way of a copy of everything. */
async function roundOf(shooter: Shooter) {
  const { book } = await copyLog(shooter);
  const [round] = book.rounds.values();
  if (!round) throw new Error('There is no round in the log.');
  return { ...round, kinds: round.entries.map(({ kind }) => kind), tally: roundTally(round) };
}

test.concurrent(
  'a count that cannot be is refused, and nothing is written',
  async ({ expect, onTestFinished }) => {
    const alone = await atBench('Al', onTestFinished);
    const { page } = alone;
    await alone.setUp('Relaxed round', { card: 'Pull-ups', count: 'A count for each spot', nerves: 0 });
    await alone.go();
    await says(alone, 'How many of 5 went in?');
    const numbers = page.locator('.counts button');
    expect(await numbers.allInnerTexts()).toEqual(['0', '1', '2', '3', '4', '5']);

    await page.keyboard.type('7');
    await says(alone, '7 is more than the 5 shots here. Press Escape and type again.');
    await page.keyboard.press('Enter');
    await says(alone, 'How many of 5 went in?');
    await page.keyboard.press('Escape');
    await alone.hands.count(4);
    await expect
      .poll(() => readCourt(page))
      .toMatchObject({ spot: 'Right elbow', figures: { 'made of 5': '4' } });
    await alone.hands.count(0);
    await alone.sees('Round over');
    expect(await roundOf(alone)).toMatchObject({
      kinds: ['count', 'count'],
      tally: { makes: 4, attempts: 10 },
    });
  },
);

test.concurrent(
  'a shot clock takes the turn and no shot, but not from a ball in the air',
  async ({ expect, onTestFinished }) => {
    const quick = await atBench('Quinn', onTestFinished);
    const court = () => readCourt(quick.page);
    await quick.setUp('Pressured round', {
      card: 'Ten free throws',
      makesNeeded: 5,
      clock: 'One for each shot',
      seconds: 3,
      crowd: false,
      nerves: 4,
    });
    await quick.go();
    await says(quick, 'Time! Was a ball in the air?');
    await quick.press('No, nothing');
    await expect.poll(court).toMatchObject({ shot: 2, dots: '-.........' });
    // The next turn has its own three seconds.
    await quick.shoot('●');
    await expect.poll(court).toMatchObject({ shot: 3, dots: '-●........' });
    await says(quick, 'Time! Was a ball in the air?');
    await quick.press('Yes, and it went in');
    await says(quick, 'Time! Was a ball in the air?');
    await quick.press('Yes, and it missed');
    await expect
      .poll(court)
      .toMatchObject({ shot: 5, dots: '-●●○......', figures: { 'needed of 6 left': '3' } });
    await quick.hands.pause();
    await quick.press('End it here');
    await says(quick, /The mark and the stake are off\./);
    await quick.press('Yes, end it');
    await quick.sees('You ended it early');
    await says(quick, '2 of 3');
    expect(await roundOf(quick)).toMatchObject({
      kinds: ['expired', 'shot', 'shot', 'shot'],
      tally: { makes: 2, attempts: 3 },
    });
  },
);

test.concurrent(
  'a round clock lets the last ball count, gives the verdict, and is undone with it',
  async ({ expect, onTestFinished }) => {
    const late = await atBench('Lea', onTestFinished);
    const court = () => readCourt(late.page);
    await late.setUp('Pressured round', {
      card: 'Ten free throws',
      makesNeeded: 5,
      clock: 'One for the round',
      seconds: 10,
      stake: 'I rack the balls',
      nerves: 4,
    });
    await late.go();
    await late.shoot('●●○');
    await says(late, 'Time! Was a ball in the air?');
    await expect.poll(court).toMatchObject({ figures: { 'needed of 7 left': '3', 'round clock': '0.0' } });
    await late.press('Yes, and it went in');
    await late.sees('Short of the mark');
    await says(late, 'The clock ran out before the card did.');
    await says(late, '3 of 4');
    await says(late, /^You owe: I rack the balls\./);

    await late.press('The last entry was wrong: take it back');
    await says(late, 'Time! Was a ball in the air?');
    await expect.poll(court).toMatchObject({ figures: { 'needed of 7 left': '3', 'round clock': '0.0' } });
    await late.press('No, nothing');
    await late.sees('Short of the mark');
    await says(late, '2 of 3');
    await late.visit('stakes');
    const owes = late.page.getByRole('region', { name: 'Lea owes' });
    await owes.getByText('I rack the balls').first().waitFor();
    expect(await roundOf(late)).toMatchObject({ ending: 'time-up', tally: { makes: 2, attempts: 3 } });
  },
);

test.concurrent(
  'counts against the round clock: it stands in a pause, comes back with an undo, and cuts a spot short',
  async ({ expect, onTestFinished }) => {
    const alone = await atBench('Ada', onTestFinished);
    const clock = async (): Promise<number> => Number((await readCourt(alone.page)).figures['round clock']);
    await alone.setUp('Pressured round', {
      card: 'Pull-ups',
      count: 'A count for each spot',
      makesNeeded: 6,
      clock: 'One for the round',
      seconds: 10,
      nerves: 4,
    });
    await alone.go();
    await alone.hands.count(3);
    await expect.poll(clock).toBeLessThan(10);
    await alone.hands.pause();
    await says(alone, 'On you go, when you are ready');
    const stood = await clock();
    expect(stood).toBeGreaterThan(0);

    await alone.go();
    expect(await clock()).toBeGreaterThan(stood - 2);
    await alone.hands.count(2);
    await alone.sees('Short of the mark');
    await says(alone, '5 of 10');
    const left = (await roundOf(alone)).clockLeft ?? 0;
    expect(left).toBeGreaterThan(0);

    await alone.page.goBack();
    await alone.sees('Short of the mark');
    await alone.press('The last entry was wrong: take it back');
    await says(alone, 'On you go, when you are ready');
    await expect.poll(clock).toBeCloseTo(left, 0);
    await alone.go();
    await says(alone, 'Time! How many shots did you get off here?');
    await alone.hands.count(2);
    await says(alone, 'How many of those 2 went in?');
    await alone.hands.count(1);
    await alone.sees('Short of the mark');
    await says(alone, '4 of 7');
    expect(await roundOf(alone)).toMatchObject({ ending: 'time-up', tally: { makes: 4, attempts: 7 } });
  },
);
