import type { Points } from '../../basics/units.ts';

/*
 * What simulated shooters showed, as the pages quote it. Held by tests/stats/model/quoted.test.ts; with more shooters by
 * tests/bench/looking.ts.
 */

/** The true drop of those of whom it is told how it reads. */
export const TRUE_DROP: Points = 10;
/** Relaxed and as many pressured shots, in one session. */
export const SHORT_RECORD = 25;
/** What they read after that, on average. */
export const READS_SHORT: Points = 2;
/** And on the day the verdict first says a drop, between these. */
export const READS_WHEN_CALLED: readonly [Points, Points] = [8, 9];

/** Months of looking after each session, three a week, a pair of rounds in each. */
export const MONTHS_OF_LOOKING = 3;
/** Of so many shooters without any drop one sees a chance of a drop above 95 in 100 at some time. */
export const ONE_IN_EVER_LIKELY = 7;
