import type { RoundId, ShooterId } from '../basics/ids.ts';
import type { Probability } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import type { ForecastScore } from '../stats/forecastScore.ts';
import type { Change } from '../stats/model/chokeIndex.ts';
import type { Study } from '../stats/study.ts';
import type { ChangeAsk, StudyAsk } from '../stats/studyAsk.ts';
import type { WhatHangs } from '../store/whatHangs.ts';

/*
 * What the page and the fitting worker say to each other. The worker keeps a copy of the rounds, so that after a round only
 * that round travels. A study or a score that is under way gives way to whatever is asked next.
 */

/** News of one shooter's record; nobody waits for an answer. */
export interface News {
  readonly say: 'news';
  readonly shooter: ShooterId;
  readonly changed: readonly Round[];
  readonly gone: readonly RoundId[];
}

export type Question =
  | { readonly ask: 'study'; readonly of: StudyAsk }
  | { readonly ask: 'forecasts'; readonly shooter: ShooterId }
  | { readonly ask: 'hangs'; readonly shooter: ShooterId }
  | { readonly ask: 'change'; readonly of: ChangeAsk };

export type Said =
  | News
  /** Leave what is under way. */
  | { readonly say: 'rest' }
  | { readonly say: 'ask'; readonly number: number; readonly question: Question };

/** `content` is null where a later question overtook this one, or there is nothing to tell. */
export type Answer =
  | { readonly ask: 'study'; readonly content: Study | null }
  | { readonly ask: 'forecasts'; readonly content: ForecastScore | null }
  | { readonly ask: 'hangs'; readonly content: WhatHangs | null }
  | { readonly ask: 'change'; readonly content: Change | null };

export type Reply =
  | { readonly number: number; readonly is: 'answer'; readonly answer: Answer }
  | { readonly number: number; readonly is: 'progress'; readonly share: Probability }
  | { readonly number: number; readonly is: 'failure'; readonly detail: string };
