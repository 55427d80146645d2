import type { Finding } from '@unitbook/engine';
import type { BillField } from '../document/bill-fields.ts';
import { allFields } from '../document/line-fields.ts';
import type { BillView } from './view-check.ts';

/** Something that is to be said of a field of a bill. */
export interface OpenPoint {
  readonly label: string;
  readonly finding: Finding;
}

const keyOf = ({ path }: Pick<Finding, 'path'>): string => path.join('.');

/** Findings that are about a field of a bill, with its label, in the order of the fields. */
function atFields(findings: readonly Finding[], fields: readonly BillField[]): readonly OpenPoint[] {
  return fields.flatMap((field) =>
    findings
      .filter((finding) => keyOf(finding) === keyOf(field))
      .map((finding) => ({ label: field.label, finding })),
  );
}

/** Whether a field holds a figure of the bill: what its receipt says is none. */
const isFigure = ({ is, path }: BillField): boolean =>
  (is === 'number' || is === 'credit') && path[0] !== 'paid';

/** The figures of a bill that cannot be read, so that nothing can be said of them: in the order of paper. */
export function unreadPoints({ form, findings }: Pick<BillView, 'form' | 'findings'>): readonly OpenPoint[] {
  return atFields(
    findings.filter(({ severity }) => severity === 'error'),
    allFields(form).filter(isFigure),
  );
}

/**
 * What is still open at the fields of a bill: what cannot be read, and what is asked.
 *
 * @param findings  all that is to be said of it, with paths into it as typed
 */
export function openPoints(
  { form }: Pick<BillView, 'form'>,
  findings: readonly Finding[],
): readonly OpenPoint[] {
  return atFields(
    findings.filter(({ severity }) => severity !== 'note'),
    allFields(form),
  );
}
