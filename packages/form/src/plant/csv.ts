/** A cell of a CSV file; a text that a sheet would take for a formula is marked as text. */
function cell(text: string): string {
  const safe = /^[=+@\t\r]|^-(?![\d.])/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * Lines as the text of a CSV file (RFC 4180, with line feeds): commas, a heading first.
 *
 * @example
 * csvText(['day', 'note'], [['2025-05-01', 'dust, "thick"']]) //=> "day,note\n2025-05-01,\"dust, \"\"thick\"\"\"\n"
 */
export function csvText(heads: readonly string[], lines: readonly (readonly string[])[]): string {
  return [heads, ...lines].map((line) => `${line.map(cell).join(',')}\n`).join('');
}
