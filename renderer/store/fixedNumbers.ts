/* Numbers that were fixed before anyone shoots, for the screens that quote them. */

export { LEAST_DOUBLES } from '../stats/doubleBall.ts';
export { LATEST_SCORED } from '../stats/forecastScore.ts';
export { LEAST_LEVERAGE, LEVERAGE_PRIOR_SD, MOST_LEVERAGE } from '../stats/leverage.ts';
export { CLEAR_EVIDENCE } from '../stats/model/evidence.ts';
export { STILL_PULLED } from '../stats/model/indexNotes.ts';
export { KNOTS } from '../stats/model/orderCurve.ts';
export { FAR_APART, LEAST_TO_COMPARE, LEAST_TO_CONTRADICT } from '../stats/model/pairs.ts';
export { PRESSURE, SPREAD_SCALES, SPREADS } from '../stats/model/priors.ts';
export { DRAWS, NODES } from '../stats/model/settings.ts';
export {
  MONTHS_OF_LOOKING,
  ONE_IN_EVER_LIKELY,
  READS_SHORT,
  READS_WHEN_CALLED,
  SHORT_RECORD,
  TRUE_DROP,
} from '../stats/model/simulated.ts';
export { CLEAR, LIKELY, SAME } from '../stats/model/verdict.ts';
export { ABOUT_SAME, LEAST_PRESSURED, LEAST_SESSIONS } from '../stats/reading.ts';
export { LEAST_DAYS, LEAST_ROUNDS } from '../stats/outcomes.ts';

/** What costs most is named only from this chance on; with all alike, that happens by luck in few records. Our own choice. */
export const SURE_ENOUGH = 0.9;
