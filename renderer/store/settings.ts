import type { DeviceId, ShooterId } from '../basics/ids.ts';
import type { EntryWay } from '../log/events.ts';

/** How this device is set. Nothing of it is a record, so it lives beside the log and may be lost without harm. */
export interface Settings {
  readonly device: DeviceId;
  readonly shooter: ShooterId | null;
  /** 0 to 1. Quiet until the shooter turns it up. */
  readonly volume: number;
  /** A countdown is spoken or beeped. */
  readonly countdown: 'voice' | 'beeps';
  readonly theme: 'dark' | 'light';
  readonly entry: EntryWay;
  /** Ask where a miss went. */
  readonly missSides: boolean;
}

export const QUIET_VOLUME = 0.3;

/** Where settings are kept: text under a name. */
export interface Shelf {
  read(name: string): string | null;
  write(name: string, text: string): void;
}

const NAME = 'loud-gym-settings';

/** The settings as they were kept, with quiet defaults for whatever is missing or unreadable. */
export function readSettings(shelf: Shelf, freshDevice: () => DeviceId): Settings {
  const kept = parsed(shelf.read(NAME));
  const volume = Number(kept['volume'] ?? Number.NaN);
  const settings: Settings = {
    device: typeof kept['device'] === 'string' ? kept['device'] : freshDevice(),
    shooter: typeof kept['shooter'] === 'string' ? kept['shooter'] : null,
    volume: volume >= 0 && volume <= 1 ? volume : QUIET_VOLUME,
    countdown: kept['countdown'] === 'beeps' ? 'beeps' : 'voice',
    theme: kept['theme'] === 'light' ? 'light' : 'dark',
    entry: kept['entry'] === 'counts' ? 'counts' : 'each-shot',
    missSides: kept['missSides'] === true,
  };
  if (kept['device'] !== settings.device) writeSettings(shelf, settings);
  return settings;
}

export function writeSettings(shelf: Shelf, settings: Settings): void {
  shelf.write(NAME, JSON.stringify(settings));
}

function parsed(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(text ?? '{}');
    return value !== null && typeof value === 'object' ? { ...value } : {};
  } catch {
    return {};
  }
}
