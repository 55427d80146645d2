/** What the bundler tells of the modules: whether one is where the page begins, and who imports it. */
interface Modules {
  readonly getModuleInfo: (
    id: string,
  ) => { readonly isEntry: boolean; readonly importers: readonly string[] } | null;
}

/** Parts of the engine that only the pages of the plant, the quote and printed bills need, although the engine's index names them. */
const LATER = new RegExp(
  [
    String.raw`engine\/src\/energy\/(?:plant|meter-accuracy|whole-root|block-clock)`,
    String.raw`engine\/src\/(?:quote|amounts-|bill-amounts|audit|check-)`,
    // Bills of many periods at once: the book makes its bills one by one.
    String.raw`engine\/src\/(?:keep|read-|true-up|open-ledgers|settle-units)`,
    String.raw`engine\/src\/settlement\/quick-`,
    String.raw`engine\/src\/bill\/(?:evaluate-(?:columns|raised)|quick-parts|raised)`,
  ].join('|'),
);

/**
 * Puts all that is fetched with the page into one script. Left to itself the bundler cuts what the page shares
 * with its later parts into many, which weigh more together: 123 kB instead of 116 kB.
 *
 * @returns  the name of the script for a module, or null where it is fetched later
 */
export function firstLoad(): (id: string, modules: Modules) => string | null {
  const known = new Map<string, boolean>();
  const isFirst = (id: string, modules: Modules, path: ReadonlySet<string>): boolean => {
    if (LATER.test(id) || path.has(id)) return false;
    const found = known.get(id);
    if (found !== undefined) return found;
    const info = modules.getModuleInfo(id);
    if (info === null) return false;
    const within = new Set(path).add(id);
    const result = info.isEntry || info.importers.some((importer) => isFirst(importer, modules, within));
    // Inside a circle "no" may only mean that the circle was met: it is asked again from elsewhere.
    if (result || path.size === 0) known.set(id, result);
    return result;
  };
  return (id, modules) => (isFirst(id, modules, new Set()) ? 'book' : null);
}
