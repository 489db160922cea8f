/** From this many shots a percentage is written; below it the bare count, since a percentage would say too much. */
export const FEW_SHOTS = 20;
