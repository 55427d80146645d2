/** How far a check has come. */
export interface Step {
  /** Bytes of the table that are dealt with. */
  readonly position: number;
  readonly rows: number;
  readonly wrong: number;
}

const SECOND = 1000;

const grouped = (value: number): string => String(value).replace(/\B(?=(\d{3})+$)/g, ',');

/** Seconds in words: "12 s", "3 min 05 s", "2 h 10 min". */
function timeWords(seconds: number): string {
  const whole = Math.ceil(seconds);
  const two = (value: number): string => String(value).padStart(2, '0');
  if (whole < 60) return `${String(whole)} s`;
  if (whole < 3600) return `${String(Math.floor(whole / 60))} min ${two(whole % 60)} s`;
  return `${String(Math.floor(whole / 3600))} h ${two(Math.floor((whole % 3600) / 60))} min`;
}

/**
 * One line of progress.
 *
 * @param size     bytes of the table; null: nobody knows, and no time left is told
 * @param from     bytes that were dealt with when the clock began
 * @param elapsed  milliseconds since then
 * @example
 * progressLine({ position: 500, rows: 1200, wrong: 3 }, { size: 1000, from: 0, elapsed: 2000 })
 * //=> "50 %  1,200 rows  600 a second  3 wrong  2 s left"
 */
export function progressLine(
  { position, rows, wrong }: Step,
  { size, from, elapsed }: { readonly size: number | null; readonly from: number; readonly elapsed: number },
): string {
  const speed = elapsed > 0 ? Math.floor((rows * SECOND) / elapsed) : 0;
  const share = size === null || size === 0 ? [] : [`${String(Math.floor((position / size) * 100))} %`];
  const done = position - from;
  const left =
    size === null || done <= 0 ? [] : [`${timeWords(((size - position) / done) * (elapsed / SECOND))} left`];
  const words = [`${grouped(rows)} rows`, `${grouped(speed)} a second`, `${grouped(wrong)} wrong`];
  return [...share, ...words, ...left].join('  ');
}
