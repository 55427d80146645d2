/** Which of the two books lies open: the invented one or the homeowner's own. */
export type Slot = 'demo' | 'own';

/** A text that was put aside: it could not be opened, or another book took its place. */
export interface Aside {
  readonly key: string;
  readonly text: string;
}

/** What is kept under a name of its own: a book, the quote with its tariff, or printed bills. */
type Kept = Slot | 'quote' | 'check';

/** Where books are kept between visits. */
export interface Keep {
  readonly load: (slot: Kept) => string | null;
  /** @returns whether it was kept */
  readonly save: (slot: Kept, text: string) => boolean;
  /** Keep a text under a key of its own. @returns whether it was kept */
  readonly setAside: (text: string) => boolean;
  /** Put another text in the place of one put aside. @returns whether it was kept */
  readonly replaceAside: (key: string, text: string) => boolean;
  readonly asides: () => readonly Aside[];
  readonly openSlot: () => Slot;
  readonly open: (slot: Slot) => void;
}

/** What `keepIn` needs of a storage: localStorage has it. */
export type TextStorage = Pick<Storage, 'getItem' | 'setItem' | 'key' | 'length'>;

const PREFIX = 'unitbook-';
const ASIDE = `${PREFIX}aside-`;
const OPEN = `${PREFIX}open`;

function attempt<Result>(act: () => Result, otherwise: Result): Result {
  try {
    return act();
  } catch {
    // A browser may refuse storage altogether or be full: the page goes on and says that nothing is kept.
    return otherwise;
  }
}

function asideKeys(storage: TextStorage): string[] {
  const keys = Array.from({ length: storage.length }, (_, index) => storage.key(index) ?? '');
  const number = (key: string): number => Number.parseInt(key.slice(ASIDE.length), 10);
  return keys.filter((key) => key.startsWith(ASIDE)).sort((a, b) => number(a) - number(b));
}

function addAside(storage: TextStorage, text: string): true {
  const keys = asideKeys(storage);
  if (keys.some((key) => storage.getItem(key) === text)) return true;
  const last = Number.parseInt(keys.at(-1)?.slice(ASIDE.length) ?? '0', 10);
  storage.setItem(`${ASIDE}${String(last + 1)}`, text);
  return true;
}

/**
 * Keep books in a browser's storage. Texts are only added or replaced, never removed.
 *
 * @param storage  such as localStorage; asked for at each use, since reaching for it may be refused
 */
export function keepIn(storage: () => TextStorage): Keep {
  const write = (key: string, text: string): boolean =>
    attempt(() => {
      storage().setItem(key, text);
      return true;
    }, false);
  return {
    load: (slot) => attempt(() => storage().getItem(PREFIX + slot), null),
    save: (slot, text) => write(PREFIX + slot, text),
    setAside: (text) => attempt(() => addAside(storage(), text), false),
    replaceAside: write,
    asides: () =>
      attempt(() => asideKeys(storage()).map((key) => ({ key, text: storage().getItem(key) ?? '' })), []),
    openSlot: () => (attempt(() => storage().getItem(OPEN), null) === 'own' ? 'own' : 'demo'),
    open: (slot) => {
      write(OPEN, slot);
    },
  };
}
