/** A fault of ours as a text to report: what was done, and what went wrong; nothing of the file itself. */
export function faultReport(what: string, error: unknown): string {
  const { name, message } =
    error instanceof Error ? error : { name: 'Thrown', message: String(error).slice(0, 200) };
  return `Unitbook, reading a meter file\nDoing: ${what}\nFault: ${name}: ${message}`;
}
