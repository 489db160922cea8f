import type { ShooterId } from '../basics/ids.ts';
import type { UsualPressure } from '../pressure/ingredients.ts';
import type { Spreads } from './model/priors.ts';
import type { MixChoice } from './model/reference.ts';

/* What may be asked of one shooter's record, by whoever has a study made and whoever makes it. */

/** Whose drop, and for which shots under which pressure. */
export interface StudyOf {
  readonly shooter: ShooterId;
  readonly mix: MixChoice;
  /** Kept from some moment on; null: as usual in the whole record. */
  readonly pressure: UsualPressure | null;
}

/** What a study is asked for. */
export interface StudyAsk extends StudyOf {
  /** Spreads of an earlier study: a quick one at these. Null: a thorough one that learns them anew. */
  readonly hyper: Spreads | null;
}

/** What a change is asked of: the latest study of this shooter for this mix and pressure. Weeks are named as ISO 8601 does. */
export interface ChangeAsk extends StudyOf {
  readonly from: string;
  readonly to: string;
}
