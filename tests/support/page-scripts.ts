import { readdirSync, readFileSync } from 'node:fs';

/** An import that is fetched with the script it stands in; `import(…)` is fetched when it is reached. */
const STATIC_IMPORT = /\b(?:from|import)\s*["'`]\.\/([\w.-]+\.js)["'`]/g;

/**
 * The scripts of a built page that its document names, and all that are fetched with them.
 *
 * @param page  the folder it was built into
 */
export function scriptsWithPage(page: string): ReadonlySet<string> {
  const html = readFileSync(`${page}/index.html`, 'utf8');
  const scripts = readdirSync(`${page}/assets`).filter((name) => name.endsWith('.js'));
  const found = new Set(scripts.filter((name) => html.includes(`assets/${name}`)));
  for (const name of found) {
    const text = readFileSync(`${page}/assets/${name}`, 'utf8');
    for (const [, other] of text.matchAll(STATIC_IMPORT)) if (other !== undefined) found.add(other);
  }
  return found;
}
