/** Gives names, each once. */
export interface Names {
  /**
   * The wish, or with it what tells it apart where another thing has that name already.
   *
   * @param apart  a second name, which stands alone where there is no wish
   */
  readonly give: (wish: string, apart: string) => string;
}

/** Names that are told apart: two meters of a feed can have the same title. */
export function names(): Names {
  const given = new Set<string>();
  return {
    give: (wish, apart) => {
      const plain = wish === '' ? apart : wish;
      if (plain === '') return '';
      let name = plain;
      if (given.has(name) && apart !== '' && apart !== plain) name = `${plain} (${apart})`;
      for (let number = 2; given.has(name); number += 1) name = `${plain} (${number})`;
      given.add(name);
      return name;
    },
  };
}
