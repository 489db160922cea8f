import type { Stop } from '../../court/cards.ts';
import { spotWords, SHOT_WORDS } from '../../court/spots.ts';
import { upperFirst } from '../parts/upperFirst.ts';

/** `Catch-and-shoot: left corner × 5, left wing × 5.` Stops of one kind that follow each other are said together. */
export function stopsWords(stops: readonly Stop[]): string {
  const sentences: string[] = [];
  for (const [at, { spot, shot, attempts }] of stops.entries()) {
    const place = `${spotWords(spot)} ×\u00a0${attempts}`;
    if (stops[at - 1]?.shot === shot) sentences.push(`${sentences.pop() ?? ''}, ${place}`);
    else sentences.push(shot === 'free-throw' ? place : `${upperFirst(SHOT_WORDS[shot])}: ${place}`);
  }
  return `${sentences.join('. ')}.`;
}
