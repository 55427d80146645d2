import type { Finding } from '@unitbook/engine';

/** The first cells of the rows of a part of a page, without their quotes. */
export function firstCells(text: string): readonly string[] {
  return [...text.matchAll(/^\| (`[^|]+`) \|/gm)].flatMap((match) =>
    (match[1] ?? '').split(', ').map((cell) => cell.replaceAll('`', '')),
  );
}

/** The part of a page below a heading. */
export function below(text: string, heading: string): string {
  const [, part] = text.split(`\n${heading}\n`);
  if (part === undefined) throw new Error(`No heading "${heading}"`);
  return part.split(/\n#+ /)[0] ?? '';
}

/** The rows of tables of findings: "code severity". */
export function severityRows(text: string): readonly string[] {
  const rows = [...text.matchAll(/^\| `([a-z-]+\/[a-z0-9-]+)` \| (\w+) \|/gm)];
  return rows.map(([, code = '', severity = '']) => `${code} ${severity}`);
}

/** The keys that can stand at a place, as the refusal of another one lists them. */
export function allowedKeys(findings: readonly Finding[]): readonly string[] {
  const refused = findings.find(
    ({ code, values }) => code === 'document/unknown-key' && values['key'] === 'odd',
  );
  return (refused?.values['allowed'] ?? '').split(', ');
}
