import type { TextStorage } from '@unitbook/form';

/** A storage in memory, and the texts that are kept in it. */
export function memory(start: Readonly<Record<string, string>> = {}): {
  readonly storage: TextStorage;
  readonly texts: Map<string, string>;
} {
  const texts = new Map(Object.entries(start));
  const storage: TextStorage = {
    get length() {
      return texts.size;
    },
    key: (index) => [...texts.keys()][index] ?? null,
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, text) => {
      texts.set(key, text);
    },
  };
  return { storage, texts };
}
