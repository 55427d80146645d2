/** The links of an Atom entry, shortened so that they can be compared. */
export interface EntryLinks {
  readonly self: string;
  readonly up: string;
  readonly related: readonly string[];
}

/**
 * A link as it is compared: without the name of the server, which some links of a feed have and others
 * not, and without the slash at its end.
 *
 * @example
 * comparableLink('https://example.org/espi/ReadingType/07/') //=> "/espi/ReadingType/07"
 */
export function comparableLink(link: string): string {
  return link
    .trim()
    .replace(/^[a-z][a-z0-9+.-]*:\/\/[^/]*/i, '')
    .replace(/\/+$/, '');
}

/**
 * The link and those above it, the longest first.
 *
 * @example
 * linksAbove('/a/b') //=> ["/a/b","/a"]
 */
export function linksAbove(link: string): readonly string[] {
  const links: string[] = [];
  for (let end = link.length; end > 0; end = link.lastIndexOf('/', end - 1)) links.push(link.slice(0, end));
  return links;
}

/**
 * The last two parts of a link, which tell one resource of a kind from another.
 *
 * @example
 * linkTail('/RetailCustomer/1/UsagePoint/01') //=> "UsagePoint/01"
 */
export function linkTail(link: string): string {
  return link.split('/').slice(-2).join('/');
}
