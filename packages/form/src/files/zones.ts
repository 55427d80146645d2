import { isZone } from '@unitbook/meter-files';

/** The time zones that the browser names, for a list to choose from; empty where it does not say. */
export function knownZones(): readonly string[] {
  try {
    return Intl.supportedValuesOf('timeZone');
  } catch {
    return [];
  }
}

/** The zone of the browser, to be offered; null where it has none. Nothing is ever worked out by it unasked. */
export function browserZone(): string | null {
  const { timeZone } = new Intl.DateTimeFormat().resolvedOptions();
  return isZone(timeZone) ? timeZone : null;
}
