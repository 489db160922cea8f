import type { ForecastNow, RoundForecast } from '../store/forecast.ts';

/* Forecasts of a round as these screens say them: what is usual, never a goal. */

/** Before a round. */
export function forecastWords(forecast: ForecastNow): string {
  const { about, attempts, rests } = forecast;
  if (rests !== 'record') return `${noRecordWords(rests)}: ${anything(forecast)}`;
  return `Your record says about ${about} of ${attempts}; four rounds in five end ${betweenWords(forecast)}.`;
}

/** Before a pair; both rounds are shot on the same card. */
export function pairForecastWords(relaxed: ForecastNow, pressured: ForecastNow): string {
  const { rests, attempts } = relaxed;
  if (rests !== 'record') {
    const low = Math.min(relaxed.low, pressured.low);
    const high = Math.max(relaxed.high, pressured.high);
    return `${noRecordWords(rests)}, relaxed or pressured: ${anything({ attempts, low, high })}`;
  }
  return (
    `Your record says about ${relaxed.about} of ${attempts} relaxed and about ${pressured.about} pressured; ` +
    `four rounds in five end ${betweenWords(relaxed)}, or pressured ${betweenWords(pressured)}.`
  );
}

/** After a round: what was forecast, and where it ended. */
export function forecastOutcomeWords(forecast: RoundForecast, makes: number): string {
  const said = `Forecast ${spanWords(forecast)}, you made ${makes}: `;
  if (makes < forecast.low) return `${said}below. At most one round in ten ends there.`;
  if (makes > forecast.high) return `${said}above. At most one round in ten ends there.`;
  return `${said}within.`;
}

type Span = Pick<RoundForecast, 'low' | 'high'>;

/** `9 to 15`, or `9` where one number is all of it. */
export function spanWords({ low, high }: Span): string {
  return low === high ? String(low) : `${low} to ${high}`;
}

function betweenWords({ low, high }: Span): string {
  if (low === high) return `at ${low}`;
  return high - low === 1 ? `at ${low} or ${high}` : `between ${low} and ${high}`;
}

function noRecordWords(rests: 'faded' | 'nothing'): string {
  return rests === 'nothing'
    ? 'No record of such shots yet'
    : 'No record of such shots from the last half year';
}

function anything({ low, high, attempts }: Span & Pick<RoundForecast, 'attempts'>): string {
  return `anything from ${low} to ${high} of ${attempts} would be no surprise.`;
}
