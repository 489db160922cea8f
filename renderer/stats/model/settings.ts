/* How thorough a fit is; apart from the fit, so that a page can quote it without loading the model. */

/** Draws from the posterior, unless told. */
export const DRAWS = 1000;
/** Settings of the spreads that the posterior is averaged over. */
export const NODES = 24;
