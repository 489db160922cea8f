/* Whether a make helps the next shot. */

export { afterMake, type AfterMake, type AfterMakeSplit } from '../stats/afterMake.ts';
