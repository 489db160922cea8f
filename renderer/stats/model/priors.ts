/*
 * What is believed before the first shot, in log-odds unless said otherwise. The model these belong to is stated in
 * design.ts. "Our own choice" means no source; the simulations in tests/bench show what the choice does.
 *
 * The pressure effect is centred on 0: before the data speak, a drop and a gain are equally likely. Its spread, 0.35
 * or about 9 points at a make rate of 50 %, holds what is published: 5.8, 3.1, 2.3 and 2.1 points at the free-throw
 * line under pressure in four leagues ("Missed Shots at the Free-Throw Line", 2015) lie within one standard deviation,
 * 15 points within two.
 */

/** A normal prior. */
export interface Normal {
  readonly mean: number;
  readonly sd: number;
}

/** Log-odds of a make at the middle of the court: 5 % to 95 % lies within two standard deviations. */
export const LEVEL: Normal = { mean: 0, sd: 1.5 };
/** A spot against that. Free throws and threes differ by about 1.3, two standard deviations. */
export const SPOT: Normal = { mean: 0, sd: 0.6 };
/** A kind of shot against the free throw, which has no column of its own. */
export const KIND: Normal = { mean: 0, sd: 0.3 };
/** Form shots are taken close in, so they may differ far more than the others. Our own choice. */
export const FORM: Normal = { mean: 0, sd: 1 };
/** First shot of a session against a warm shooter. Some loss is expected, the sign is not forced. */
export const WARM: Normal = { mean: -0.15, sd: 0.3 };
/** For each 100 shots beyond the first 100. */
export const TIRED: Normal = { mean: -0.1, sd: 0.2 };
/** Slope of the free order curve at its start, for 50 shots. */
export const ORDER_SLOPE: Normal = { mean: 0, sd: 0.4 };
/** What tiredness gains by shot 200 beyond a straight line from shot 100. Our own choice, with the next. */
export const SPENT: Normal = { mean: 0, sd: 0.4 };
/**
 * How far the slope bends at a knot. Chosen by simulation (tests/bench/modelCoverage.ts): slopes free of each other, sd 0.4,
 * cost a drop of 10 points one point of bias, since the late slopes then hang in the air; bends of 0.15 without a spent
 * column follow an odd curve less well than small ones with it, at the same cost to a true drop.
 */
export const ORDER_BEND: Normal = { mean: 0, sd: 0.07 };
/** The person's answer to pressure. */
export const PRESSURE: Normal = { mean: 0, sd: 0.35 };
/** Difference between no pressure level and the full one, within pressured rounds. */
export const DOSE: Normal = { mean: 0, sd: 0.2 };
/** A spot's own answer to pressure, against the person's. */
export const SPOT_PRESSURE: Normal = { mean: 0, sd: 0.12 };
/** An ingredient that is on, against the same round without it. */
export const INGREDIENT: Normal = { mean: 0, sd: 0.15 };
/**
 * How fast the answer to pressure may move, for 10 weeks: 0.25 holds a drop that goes from 12 points to 2 in twelve weeks
 * within two standard deviations, and then the change is covered as it should be; 0.2 is a little tight. Practice under pressure moves it: g = 0.67, 95 % interval
 * 0.43 to 1.12, in the meta-analysis of Low and others (2021).
 */
export const TREND: Normal = { mean: 0, sd: 0.25 };

/** Correlation of the week's own answer to pressure with that of the week before: half is left after 6.6 weeks. */
export const WEEK_CORRELATION = 0.9;

/** Standard deviations that are learnt from the data. */
export interface Spreads {
  /** τs: step of the skill walk from one week to the next. */
  readonly skill: number;
  /** τd: good and bad days. */
  readonly day: number;
  /** τu: a week's own answer to pressure. */
  readonly week: number;
  /** τc: a day's own answer to pressure. */
  readonly dayPressure: number;
}

export const SPREADS = ['skill', 'day', 'week', 'dayPressure'] as const satisfies readonly (keyof Spreads)[];

/**
 * Scales of the half-normal priors of the spreads. 0.08 lets skill move by 0.4 (10 points) in half a year; make rates
 * vary by 0.2 to 0.3 from day to day beyond chance; the last two set a ceiling on what one week or one day can prove.
 */
export const SPREAD_SCALES: Spreads = { skill: 0.08, day: 0.25, week: 0.15, dayPressure: 0.15 };

/** The level that stands for pressure where none was noted: the middle of 0 to 1. */
export const UNKNOWN_DOSE = 0.5;
