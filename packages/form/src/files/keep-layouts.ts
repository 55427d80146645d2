/** Where the browser remembers how tables are to be read, by what `layoutKey` makes of their columns. */
export interface LayoutKeep {
  /** The text of a layout; null for none. */
  readonly load: (key: string) => string | null;
  /** @returns whether it is remembered */
  readonly save: (key: string, text: string) => boolean;
  /** @returns whether it is forgotten */
  readonly forget: (key: string) => boolean;
}

/** What `keepLayoutsIn` needs of a storage: localStorage has it. */
export type LayoutStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

const PREFIX = 'unitbook-columns-';

function attempt<Result>(act: () => Result, otherwise: Result): Result {
  try {
    return act();
  } catch {
    // A browser may refuse storage altogether or be full: the table is read all the same, and asked about again.
    return otherwise;
  }
}

/**
 * Remember layouts in a browser's storage.
 *
 * @param storage  such as localStorage; asked for at each use, since reaching for it may be refused
 */
export function keepLayoutsIn(storage: () => LayoutStorage): LayoutKeep {
  return {
    load: (key) => attempt(() => storage().getItem(PREFIX + key), null),
    save: (key, text) =>
      attempt(() => {
        storage().setItem(PREFIX + key, text);
        return true;
      }, false),
    forget: (key) =>
      attempt(() => {
        storage().removeItem(PREFIX + key);
        return true;
      }, false),
  };
}
