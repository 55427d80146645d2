import type { Finding, Severity } from '@unitbook/engine';

/** An input that brings about one finding, and everything that the finding has to say. */
export interface MessageCase {
  readonly code: string;
  /** What is wrong with the input, to tell cases of one code apart. */
  readonly when: string;
  readonly make: () => readonly Finding[];
  /** Left out: an error. */
  readonly severity?: Severity;
  /** "line:column" in a text, else the path, joined by points. */
  readonly at: string;
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
  readonly offer?: string;
  /** Whether the same input brings about other findings, too. */
  readonly isAmongOthers?: boolean;
}

/** What a finding says, in the shape in which a case states it. */
export function said(finding: Finding): Omit<MessageCase, 'when' | 'make' | 'isAmongOthers'> {
  const { code, severity, position, path, found, expected, remedy, offer } = finding;
  const at = position === undefined ? path.join('.') : `${String(position.line)}:${String(position.column)}`;
  return { code, severity, at, found, expected, remedy, ...(offer === undefined ? {} : { offer }) };
}
