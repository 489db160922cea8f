import { expect, test } from 'vitest';

import { COURTS } from '../../renderer/court/ruleSets.ts';
import { courtFrame } from '../../renderer/charts/courtFrame.ts';
import { atBench } from '../tools/atBench.ts';
import { readCourt } from '../tools/court.ts';
import { readResult } from '../tools/result.ts';
import { copyLog } from '../tools/savedFile.ts';
import type { Shooter } from '../tools/shooter.ts';

/** Touches the court drawing at a place on the floor, in metres from the rim. */
async function touchFloor({ page }: Shooter, x: number, y: number): Promise<void> {
  const map = page.locator('.court-map.touchable');
  await map.scrollIntoViewIfNeeded();
  const frame = courtFrame(COURTS.FIBA);
  const drawn = frame.toDrawing({ x, y });
  const width = (await map.boundingBox())?.width ?? 0;
  const scale = width / frame.width;
  await map.tap({ position: { x: drawn.x * scale, y: drawn.y * scale } });
}

test('a spot of one’s own is put on the floor, stands on a card of one’s own, is shot and found in the result', async ({
  onTestFinished,
}) => {
  const sam = await atBench('Sam', onTestFinished);
  const { page } = sam;
  await sam.follow('Cards and spots');
  await sam.press('Add a spot');
  await sam.press('Keep this spot');
  expect(await page.getByRole('alert').innerText()).toBe('Please give the spot a name.');
  await sam.hands.write(page.getByLabel('Name of the spot'), 'Top of the key');
  await sam.press('Keep this spot');
  await page.getByText('Top of the key is on every court already. Choose another name.').waitFor();
  await touchFloor(sam, -3, 1.5);
  // Pythagoras: 3.35 m.
  await page.getByText(/^3\.[34] m from the rim, inside the three-point line\.$/).waitFor();
  await touchFloor(sam, -5, 6);
  await page.getByText(/^7\.8 m from the rim, beyond the three-point line\.$/).waitFor();
  await sam.hands.write(page.getByLabel('Name of the spot'), 'Bleachers');
  await sam.press('Keep this spot');
  await page.getByText('Bleachers is on the floor.').waitFor();

  await sam.press('Make a card of your own');
  await sam.press('Keep this card');
  expect(await page.getByRole('alert').innerText()).toBe(
    'A card needs at least one stop. Choose a spot and add it.',
  );
  await touchFloor(sam, -5, 6);
  await sam.choose('How does the shot come?', 'Off the dribble, going left');
  await sam.step('Attempts at this stop', 3);
  await sam.press(/^Add this stop/);
  await sam.hands.press(page.getByText(/Choose it by name$/));
  await sam.choose('Where from?', 'Free-throw line');
  await sam.step('Attempts at this stop', 2);
  await sam.press(/^Add this stop/);
  await page.getByText('5 shots, 2 stops').waitFor();
  // The line first, then the bleachers.
  await sam.press('Later: stop 1, Bleachers');
  await sam.hands.write(page.getByLabel('Name of the card'), 'Cold corner');
  await sam.press('Keep this card');
  await page.getByText('Cold corner is kept. Choose it when you set a round up.').waitFor();

  await sam.follow(/Bench$/);
  await sam.setUp('Relaxed round', { card: 'Cold corner', nerves: 1 });
  await sam.go();
  await sam.shoot('●○');
  await expect.poll(() => readCourt(page)).toMatchObject({ spot: 'Bleachers', shot: 3, of: 5, dots: '...' });
  await page.getByRole('img', { name: 'Stand here: Bleachers' }).waitFor();
  await page.getByText('off the dribble, going left, shot 3 of 5').waitFor();
  await sam.shoot('●●○');
  await sam.sees('Round over');
  await sam.rateAfter(1, 1);
  const { spots, rounds } = await readResult(page);
  expect(Object.keys(spots)).toEqual([
    'Free-throw line, free throw',
    'Bleachers, off the dribble, going left',
  ]);
  expect(spots['Bleachers, off the dribble, going left']?.[0]).toMatch(/^2 of 3/);
  expect(rounds[0]).toContain('Cold corner');
  // On the court of the result it stands where it was put.
  const { x: left, y: down } = courtFrame(COURTS.FIBA).toDrawing({ x: -5, y: 6 });
  const points = await page
    .locator('.spot-point')
    .evaluateAll((circles) =>
      circles.map((circle) => [circle.getAttribute('cx'), circle.getAttribute('cy')]),
    );
  expect(points).toHaveLength(2);
  expect(points.some(([cx, cy]) => Math.hypot(Number(cx) - left, Number(cy) - down) < 10)).toBe(true);

  const { book } = await copyLog(sam);
  const { x = 0, y = 0 } = book.ownSpots.get('Bleachers') ?? {};
  expect(Math.hypot(x + 5, y - 6)).toBeLessThan(0.1);
});
