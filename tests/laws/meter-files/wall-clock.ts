const FORMATS = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = FORMATS.get(zone);
  if (known !== undefined) return known;
  const numeric = 'numeric';
  const parts = { year: numeric, month: numeric, day: numeric, hour: numeric, minute: numeric } as const;
  const made = new Intl.DateTimeFormat('en', { timeZone: zone, hourCycle: 'h23', ...parts });
  FORMATS.set(zone, made);
  return made;
}

/**
 * What a clock on the wall of a zone shows, as minutes since 1970-01-01 00:00 of that clock.
 *
 * @param minute  since 1970-01-01 00:00 UTC
 */
export function shownInZone(zone: string, minute: number): number {
  const shown = new Map(
    formatOf(zone)
      .formatToParts(minute * 60_000)
      .map(({ type, value }) => [type, Number.parseInt(value, 10)]),
  );
  const part = (type: Intl.DateTimeFormatPartTypes): number => shown.get(type) ?? NaN;
  return Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute')) / 60_000;
}
