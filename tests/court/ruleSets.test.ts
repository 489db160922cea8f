import { describe, expect, it } from 'vitest';

import {
  arcMeetsStraight,
  CATCH_AND_SHOOT,
  COURTS,
  RULE_SETS,
  type RuleSet,
} from '../../renderer/court/ruleSets.ts';

/*
 * The rule books themselves could not be seen. "Seen in secondary pages" means a public page that repeats the rule;
 * "from memory" means that nobody but us says so here. Lengths below are in the unit the source uses.
 */

const FOOT = 0.3048;
const INCH = 0.0254;

describe('the size of the court', () => {
  it('is 28 m by 15 m under FIBA (Official Basketball Rules, article 2.1; seen quoted in public copies)', () => {
    expect(COURTS.FIBA).toMatchObject({ length: 28, width: 15 });
  });
  // Seen in secondary pages.
  it.each([
    ['NBA', 94, 50],
    ['WNBA', 94, 50],
    ['NCAA', 94, 50],
    ['NFHS', 84, 50],
  ] as const)('is %d ft by %d ft under %s', (rules, length, width) => {
    expect(COURTS[rules].length).toBeCloseTo(length * FOOT, 10);
    expect(COURTS[rules].width).toBeCloseTo(width * FOOT, 10);
  });
});

describe('the three-point line', () => {
  // Seen in secondary pages: FIBA 6.75 m; NBA 23 ft 9 in; WNBA and NCAA 22 ft 1¾ in; NFHS 19 ft 9 in.
  it.each([
    ['FIBA', 6.75],
    ['NBA', (23 * 12 + 9) * INCH],
    ['WNBA', (22 * 12 + 1.75) * INCH],
    ['NCAA', (22 * 12 + 1.75) * INCH],
    ['NFHS', (19 * 12 + 9) * INCH],
  ] as const)('%s: the arc is %d m from the centre of the rim', (rules, radius) => {
    expect(COURTS[rules].arcRadius).toBeCloseTo(radius, 10);
  });
  it('WNBA and NCAA have the FIBA arc to the millimetre', () => {
    expect(COURTS.WNBA.arcRadius).toBeCloseTo(6.75, 3);
    expect(COURTS.NCAA.arcRadius).toBeCloseTo(6.75, 3);
  });
  // Distance from the sideline. Seen in secondary pages: FIBA 0.90 m, NBA and WNBA 3 ft. NCAA 40⅛ in and NFHS (the arc
  // runs on straight to the endline) from memory.
  it.each([
    ['FIBA', 0.9],
    ['NBA', 3 * FOOT],
    ['WNBA', 3 * FOOT],
    ['NCAA', 40.125 * INCH],
    ['NFHS', (25 * 12 - 237) * INCH],
  ] as const)('%s: the straight part is %d m from the sideline', (rules, margin) => {
    const { width, cornerDistance } = COURTS[rules];
    expect(width / 2 - cornerDistance).toBeCloseTo(margin, 10);
  });
  // Worked out from the figures above.
  it('FIBA: arc and straight meet 1.4151 m beyond the rim, 2.9901 m from the endline, at 12.10 degrees', () => {
    const { FIBA } = COURTS;
    expect(arcMeetsStraight(FIBA)).toBeCloseTo(1.4151, 4);
    expect(arcMeetsStraight(FIBA) + FIBA.rimFromEndline).toBeCloseTo(2.9901, 4);
    expect((Math.acos(FIBA.cornerDistance / FIBA.arcRadius) * 180) / Math.PI).toBeCloseTo(12.1, 2);
  });
  it('NBA: 8.948 ft beyond the rim', () => {
    expect(arcMeetsStraight(COURTS.NBA) / FOOT).toBeCloseTo(8.948, 3);
  });
  it.each([
    ['NBA', 14.198 * FOOT],
    ['WNBA', 7.787 * FOOT],
    ['NCAA', 118.57 * INCH],
    ['NFHS', 63 * INCH],
  ] as const)('%s: they meet %d m from the endline', (rules, meets) => {
    const court = COURTS[rules];
    expect(arcMeetsStraight(court) + court.rimFromEndline).toBeCloseTo(meets, 3);
  });
});

describe('the line, the key and the rim', () => {
  it('FIBA: the free-throw line is 5.80 m from the endline (seen in secondary pages), 4.225 m from the rim', () => {
    const { FIBA } = COURTS;
    expect(FIBA.freeThrowFromRim + FIBA.rimFromEndline).toBeCloseTo(5.8, 10);
    expect(FIBA.freeThrowFromRim).toBeCloseTo(4.225, 10);
  });
  it.each(['NBA', 'WNBA', 'NCAA', 'NFHS'] as const)(
    '%s: 15 ft from the face of the board (seen in secondary pages), 13 ft 9 in from the rim',
    (rules) => {
      const { freeThrowFromRim, rimFromEndline } = COURTS[rules];
      expect(freeThrowFromRim).toBeCloseTo(13.75 * FOOT, 10);
      // The board stands 4 ft inside the endline: from memory.
      expect(freeThrowFromRim + rimFromEndline).toBeCloseTo(19 * FOOT, 10);
    },
  );
  // Centre of the rim to the endline: FIBA 1.575 m from memory; 63 in, seen in secondary pages for the NBA.
  it.each([
    ['FIBA', 1.575],
    ['NBA', 63 * INCH],
    ['WNBA', 63 * INCH],
    ['NCAA', 63 * INCH],
    ['NFHS', 63 * INCH],
  ] as const)('%s: the rim is %d m from the endline', (rules, metres) => {
    expect(COURTS[rules].rimFromEndline).toBeCloseTo(metres, 10);
  });
  // Seen in secondary pages.
  it.each([
    ['FIBA', 4.9],
    ['NBA', 16 * FOOT],
    ['WNBA', 16 * FOOT],
    ['NCAA', 12 * FOOT],
    ['NFHS', 12 * FOOT],
  ] as const)('%s: the key is %d m wide', (rules, width) => {
    expect(COURTS[rules].keyWidth).toBeCloseTo(width, 10);
  });
  it('the rim is 18 in wide (seen in secondary pages); FIBA allows 450 to 459 mm (from memory)', () => {
    expect(COURTS.NBA.rimDiameter).toBeCloseTo(18 * INCH, 10);
    expect(COURTS.FIBA.rimDiameter).toBeGreaterThanOrEqual(0.45);
    expect(COURTS.FIBA.rimDiameter).toBeLessThanOrEqual(0.459);
  });
  // 24 s and 30 s seen in secondary pages; NFHS mandates none (seen in secondary pages), some states use 35 s.
  it.each([
    ['FIBA', 24],
    ['NBA', 24],
    ['WNBA', 24],
    ['NCAA', 30],
    ['NFHS', null],
  ] as const)('%s: the shot clock starts at %j', (rules, seconds) => {
    expect(COURTS[rules].shotClock).toBe(seconds);
  });
});

describe('the last moment for a catch and a shot', () => {
  // NBA: rule text quoted in a secondary page. NFHS 5-2-5 and NCAA: "0.3 s or less is a tap only", secondary pages.
  // FIBA Art. 16.2.5 and the WNBA: from memory.
  it.each([
    ['FIBA', 0.3],
    ['NBA', 0.3],
    ['WNBA', 0.3],
    ['NCAA', 0.4],
    ['NFHS', 0.4],
  ] as const)('%s: %d s', (rules, seconds) => {
    expect(CATCH_AND_SHOOT[rules]).toBe(seconds);
  });
});

describe('every rule set', () => {
  it.each(RULE_SETS)('%s fits on its own floor', (rules: RuleSet) => {
    const court = COURTS[rules];
    expect(court.cornerDistance).toBeLessThanOrEqual(court.arcRadius);
    expect(court.cornerDistance).toBeLessThan(court.width / 2);
    expect(court.freeThrowFromRim).toBeLessThan(court.arcRadius);
    expect(court.keyWidth).toBeLessThan(2 * court.cornerDistance);
    expect(court.rimFromEndline + court.arcRadius).toBeLessThan(court.length / 2);
  });
});
