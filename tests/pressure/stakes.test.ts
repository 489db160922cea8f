import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { looksLikeMoney } from '../../renderer/pressure/money.ts';
import {
  FAVOURS,
  fitsPolicy,
  stakePolicy,
  timesOwed,
  type StakeAge,
} from '../../renderer/pressure/stakes.ts';

const ADULT: StakeAge = { under18: false };
const UNTOLD: StakeAge = {};
const MINOR: StakeAge = { under18: true };
const ALLOWED: StakeAge = { under18: true, favours: true };

describe('what may be on the line', () => {
  it.each<readonly [string, readonly StakeAge[], string]>([
    ['an adult', [ADULT], 'open'],
    ['somebody who never told', [UNTOLD], 'open'],
    ['someone under 18', [MINOR], 'off'],
    ['someone under 18 whom an adult allowed favours', [ALLOWED], 'favours'],
    ['adults together', [ADULT, UNTOLD], 'open'],
    ['a group with someone under 18', [ADULT, MINOR], 'off'],
    ['a group with someone under 18, favours or not', [ADULT, ALLOWED], 'off'],
    ['two under 18, both allowed favours', [ALLOWED, ALLOWED], 'off'],
  ])('for %s', (_who, shooters, policy) => {
    expect(stakePolicy(shooters)).toBe(policy);
  });

  it('is nothing of one’s own words for anyone under 18, whatever the group', () => {
    const anyone = fc.constantFrom(ADULT, UNTOLD, MINOR, ALLOWED);
    fc.assert(
      fc.property(fc.array(anyone, { minLength: 1, maxLength: 8 }), fc.string(), (shooters, stake) => {
        fc.pre(!FAVOURS.some((favour) => favour === stake));
        const policy = stakePolicy(shooters);
        expect(fitsPolicy(stake, policy)).toBe(!shooters.some(({ under18 }) => under18));
        expect(fitsPolicy(null, policy)).toBe(true);
      }),
    );
  });

  it('is one of the listed favours where they are allowed, and none of them is money', () => {
    for (const favour of FAVOURS) {
      expect(fitsPolicy(favour, 'favours')).toBe(true);
      expect(fitsPolicy(favour, 'off')).toBe(false);
      expect(looksLikeMoney(favour)).toBe(false);
    }
  });
});

it('a debt doubles, and doubles again', () => {
  expect([0, 1, 2].map((times) => timesOwed(times))).toEqual([1, 2, 4]);
});
