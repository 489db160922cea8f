import type { Metres, Seconds } from '../basics/units.ts';

/** The court markings a shooter plays under. */
export const RULE_SETS = ['FIBA', 'NBA', 'WNBA', 'NCAA', 'NFHS'] as const;
export type RuleSet = (typeof RULE_SETS)[number];

/** Markings of one half court. Lengths in metres. */
export interface CourtDimensions {
  /** Sideline to sideline, inner edges. */
  readonly width: Metres;
  /** Endline to endline, inner edges. */
  readonly length: Metres;
  /** Inner edge of the endline to the centre of the rim. */
  readonly rimFromEndline: Metres;
  /** Centre of the rim to the three-point arc. */
  readonly arcRadius: Metres;
  /** Centre of the rim, sideways, to the straight part of the three-point line. */
  readonly cornerDistance: Metres;
  /** Centre of the rim to the free-throw line. */
  readonly freeThrowFromRim: Metres;
  readonly keyWidth: Metres;
  /** Inside diameter of the rim. */
  readonly rimDiameter: Metres;
  /** Full shot clock; null where the rule set asks for none. */
  readonly shotClock: Seconds | null;
}

const FOOT = 0.3048;
const INCH = 0.0254;

/** 15 ft from the board's face, which stands 4 ft inside the endline; the rim's centre is 5 ft 3 in from it. */
const US_FREE_THROW = (4 + 15) * FOOT - 63 * INCH;
const US_COMMON = {
  width: 50 * FOOT,
  rimFromEndline: 63 * INCH,
  freeThrowFromRim: US_FREE_THROW,
  rimDiameter: 18 * INCH,
} as const;

/**
 * Figures as the rule books give them (FIBA Official Basketball Rules 2024; NBA, WNBA, NCAA and NFHS Rule 1),
 * taken over from secondary pages: check against your own current rule book before you paint a line by them.
 */
export const COURTS: Readonly<Record<RuleSet, CourtDimensions>> = {
  FIBA: {
    width: 15,
    length: 28,
    rimFromEndline: 1.575,
    arcRadius: 6.75,
    cornerDistance: 6.6,
    freeThrowFromRim: 5.8 - 1.575,
    keyWidth: 4.9,
    rimDiameter: 0.45,
    shotClock: 24,
  },
  NBA: {
    ...US_COMMON,
    length: 94 * FOOT,
    arcRadius: 285 * INCH,
    cornerDistance: 264 * INCH,
    keyWidth: 16 * FOOT,
    shotClock: 24,
  },
  WNBA: {
    ...US_COMMON,
    length: 94 * FOOT,
    arcRadius: 265.75 * INCH,
    cornerDistance: 264 * INCH,
    keyWidth: 16 * FOOT,
    shotClock: 24,
  },
  NCAA: {
    ...US_COMMON,
    length: 94 * FOOT,
    arcRadius: 265.75 * INCH,
    cornerDistance: 259.875 * INCH,
    keyWidth: 12 * FOOT,
    shotClock: 30,
  },
  NFHS: {
    ...US_COMMON,
    length: 84 * FOOT,
    arcRadius: 237 * INCH,
    cornerDistance: 237 * INCH,
    keyWidth: 12 * FOOT,
    shotClock: null,
  },
};

/**
 * Least time on the clock with which a ball may be caught and shot; with less only a tap can score. NBA: 0.3 s, rule text
 * quoted in a secondary page. NFHS Rule 5-2-5: 0.3 s or less is a tap only, so a clock in tenths must show 0.4; NCAA the
 * same (both seen in secondary pages). FIBA Art. 16.2.5: 0.3 s (the article from memory); WNBA as the NBA (from memory).
 */
export const CATCH_AND_SHOOT: Readonly<Record<RuleSet, Seconds>> = {
  FIBA: 0.3,
  NBA: 0.3,
  WNBA: 0.3,
  NCAA: 0.4,
  NFHS: 0.4,
};

/** How far the three-point arc's meeting point with its straight part lies beyond the rim's centre line, in metres. */
export function arcMeetsStraight(court: CourtDimensions): Metres {
  return Math.sqrt(Math.max(0, court.arcRadius ** 2 - court.cornerDistance ** 2));
}
