import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { oncePer, oncePerList } from '../../renderer/basics/remembered.ts';

interface Box {
  readonly number: number;
}

const box = (number: number): Box => ({ number });

/** Adds up, and counts how often it does. */
function adder() {
  let runs = 0;
  const sum = oncePerList((boxes: readonly Box[]) => {
    runs += 1;
    return boxes.reduce((total, { number }) => total + number, 0);
  });
  return { sum, runs: () => runs };
}

describe('work done once for each object', () => {
  it('is done again for another object, however alike', () => {
    let runs = 0;
    const double = oncePer(({ number }: Box) => {
      runs += 1;
      return 2 * number;
    });
    const one = box(4);
    expect([double(one), double(one), double(box(4)), double(one)]).toEqual([8, 8, 8, 8]);
    expect(runs).toBe(2);
  });
});

describe('work done once for each list', () => {
  it('is done again where an object is another, moved, gone or new', () => {
    const { sum, runs } = adder();
    const [a, b, c] = [box(1), box(2), box(4)];
    expect([sum([a, b]), sum([a, b])]).toEqual([3, 3]);
    expect(runs()).toBe(1);
    expect([sum([a, c]), sum([a, b, c]), sum([b, a]), sum([a])]).toEqual([5, 7, 3, 1]);
    expect(runs()).toBe(5);
  });

  it('is not taken in by a list that was written in', () => {
    const { sum } = adder();
    const list = [box(1), box(2)];
    expect(sum(list)).toBe(3);
    list[1] = box(5);
    expect(sum(list)).toBe(6);
    list.push(box(1));
    expect(sum(list)).toBe(7);
  });

  it('is done for an empty list too', () => {
    expect(adder().sum([])).toBe(0);
  });

  it('always comes to what it would come to anew', () => {
    const boxes = Array.from({ length: 6 }, (_, i) => box(10 ** i));
    const { sum } = adder();
    const lists = fc.array(fc.array(fc.nat(5), { maxLength: 6 }), { maxLength: 12 });
    fc.assert(
      fc.property(lists, (picks) => {
        for (const pick of picks) {
          const list = pick.flatMap((at) => boxes[at] ?? []);
          expect(sum(list)).toBe(list.reduce((total, { number }) => total + number, 0));
        }
      }),
    );
  });
});
