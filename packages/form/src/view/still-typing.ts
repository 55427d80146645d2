import type { Finding } from '@unitbook/engine';

/** The id of the input that a finding is about. */
export function fieldOf({ path }: Finding): string {
  const [list, index, ...field] = path;
  if (list !== 'readings') return `account-${path.join('-')}`;
  return `reading-${String(index)}-${field.length === 0 ? 'import' : field.join('-')}`;
}

/** `4120.` */
const NUMBER = /\d\s*[.,]$/;
/** `1`, `1 Ap`, `1 Apr 202`, `Apr`, or `2025-0` */
const DATE = /^(?:\d\d?(?:[ ./-]+(?:[a-z]*|\d?\d?)(?:[ ,./-]+\d{0,3})?)?|[a-z]+|\d{3,4}(?:-[\d-]{0,4})?)$/i;

/**
 * A finding about a text that is being typed and so far is only the beginning of one: still to type.
 *
 * @param typing  the id of the input that is being typed in
 */
export function whileTyping(finding: Finding, typing: string | undefined): Finding {
  const { path, severity, values } = finding;
  const isDate = path[2] === 'date';
  return severity === 'error' &&
    fieldOf(finding) === typing &&
    (isDate ? DATE : NUMBER).test((values['value'] ?? '').trim())
    ? { ...finding, code: 'reading/missing-register', remedy: 'the rest of it.' }
    : finding;
}
