const files = import.meta.glob<string>('../../published/data/obis/telegram_*.txt', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** The published telegrams by name, with the line ends that they are sent with (see SOURCE.txt beside them). */
export const SAMPLES: ReadonlyMap<string, string> = new Map(
  Object.entries(files).map(([path, text]) => [
    path.replace(/^.*telegram_|\.txt$/g, ''),
    text.replace(/\r?\n/g, '\r\n'),
  ]),
);

/** One of the published telegrams. */
export function sample(name: 'v4_2' | 'v5' | 'v5_hu'): string {
  const text = SAMPLES.get(name);
  if (text === undefined) throw new RangeError(`no sample ${name}`);
  return text;
}
