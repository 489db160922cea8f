/**
 * Units as types. A plain number may be given where a unit is asked for, but one unit never passes for another.
 */
type Unit<Name extends string> = number & { readonly unit?: Name };

/** Length in metres. */
export type Metres = Unit<'metres'>;

/** Span of time in seconds. */
export type Seconds = Unit<'seconds'>;

/** Wall-clock moment: milliseconds since 1970-01-01T00:00Z. Used for labels and order, never for game time. */
export type EpochMs = Unit<'epoch-ms'>;

/** Probability, 0 to 1. */
export type Probability = Unit<'probability'>;

/** Percentage points: 6.5 means "six and a half points of make percentage". */
export type Points = Unit<'points'>;

/** Calendar day where the shooter stood, ISO 8601 `YYYY-MM-DD`. */
export type IsoDate = string & { readonly unit?: 'iso-date' };
