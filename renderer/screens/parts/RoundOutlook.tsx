import { useMemo } from 'react';

import type { Stop } from '../../court/cards.ts';
import type { Condition } from '../../log/events.ts';
import { roundForecast } from '../../store/forecast.ts';
import { forecastWords, pairForecastWords } from '../forecastWords.ts';
import { useDoors, useGym } from '../gymContext.ts';

interface Props {
  readonly shooter: string;
  readonly condition: Condition | 'pair';
  readonly stops: readonly Stop[];
}

/**
 * What to expect of the round to come, in the same quiet line whatever the condition: it is no second mark, and what is
 * said before a relaxed round must not differ from what is said before a pressured one.
 */
export function RoundOutlook({ shooter, condition, stops }: Props) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const words = useMemo(() => {
    const now = gym.moment();
    const say = (one: Condition) => roundForecast(book, shooter, one, stops, now);
    return condition === 'pair'
      ? pairForecastWords(say('relaxed'), say('pressured'))
      : forecastWords(say(condition));
  }, [gym, book, shooter, condition, stops]);
  return <p className="quiet">{words}</p>;
}
