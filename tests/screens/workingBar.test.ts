import { afterEach, beforeEach, expect, it, vi } from 'vitest';

import { tellIfLasting } from '../../renderer/screens/parts/lasting.ts';
import { WORTH_A_WORD } from '../../renderer/screens/parts/WorkingBar.tsx';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

it('says that numbers are worked out anew only once that has lasted half a second', () => {
  const told: boolean[] = [];
  const over = tellIfLasting(WORTH_A_WORD, (lasting) => told.push(lasting));
  vi.advanceTimersByTime(499);
  expect(told).toEqual([]);
  vi.advanceTimersByTime(1);
  expect(told).toEqual([true]);
  over();
  expect(told).toEqual([true, false]);
  vi.advanceTimersByTime(5000);
  expect(told).toEqual([true, false]);
});

it('never says so of what is done sooner', () => {
  const told: boolean[] = [];
  const over = tellIfLasting(WORTH_A_WORD, (lasting) => told.push(lasting));
  vi.advanceTimersByTime(499);
  over();
  vi.advanceTimersByTime(5000);
  expect(told).not.toContain(true);
});
