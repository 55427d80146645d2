import { dayText, type DayNumber, type Finding, type Outcome, type Path } from '../../quantity/index.ts';
import { inFileOrder, locate, readDocument } from '../../tariff/index.ts';
import { coveredWords, datedFindings, periodOfDated } from './dispute-days.ts';
import { disputeFinding } from './dispute-findings.ts';
import { rangesOf } from './dispute-ranges.ts';
import { disputeSchema, type DisputeDocument, type DisputeVersion } from './dispute-schema.ts';
import { sourceKey } from './source-of-clause.ts';

/** Every clause of a part of a document, with its path. */
function clausesIn(value: unknown, path: Path): readonly { readonly clause: string; readonly path: Path }[] {
  if (typeof value !== 'object' || value === null) return [];
  const parts = Array.isArray(value) ? [...(value as unknown[]).entries()] : Object.entries(value);
  return parts.flatMap(([key, part]: [string | number, unknown]) =>
    key === 'clause' && typeof part === 'string'
      ? [{ clause: part, path: [...path, key] }]
      : clausesIn(part, [...path, key]),
  );
}

function sourceFindings({ sources, versions }: DisputeDocument): readonly Finding[] {
  const keys = Object.keys(sources);
  return clausesIn(versions, ['versions'])
    .filter(({ clause }) => sourceKey(clause, keys) === null)
    .map(({ clause, path }) =>
      disputeFinding(
        'dispute/unknown-source',
        { path },
        { clause, sources: keys.join(', ') || 'there is none' },
      ),
    );
}

function meaningFindings(document: DisputeDocument): readonly Finding[] {
  const { versions } = document;
  return [
    ...datedFindings(versions, ['versions']),
    ...versions.flatMap((version, at) => {
      const path = ['versions', at];
      const { interest } = version;
      const rates = interest?.kind === 'simple' ? interest.rates : [];
      return [...rangesOf(version, path), ...datedFindings(rates, [...path, 'interest', 'rates'])];
    }),
    ...sourceFindings(document),
  ];
}

/**
 * Read the rules by which wrong bills are disputed in a place, and list everything that is wrong with them.
 *
 * @param text  the JSON file, whole
 * @returns     the rules, or null when they cannot be used; findings with line and column, in file order
 * @example
 * readDispute('{"format":"unitbook-dispute-1"}').value //=> null
 */
export function readDispute(text: string): Outcome<DisputeDocument | null> {
  const read = readDocument<DisputeDocument>(text, disputeSchema);
  const checked = read.mended === null ? [] : meaningFindings(read.mended);
  const findings = inFileOrder([...read.findings, ...checked.map((finding) => locate(read.source, finding))]);
  return { value: checked.length > 0 ? null : read.value, findings };
}

/**
 * The version of the rules that is in force on a day.
 *
 * @returns null with a finding where none is
 */
export function disputeVersionOn(
  { versions }: DisputeDocument,
  day: DayNumber,
): Outcome<DisputeVersion | null> {
  const version = versions.find((one) => {
    const period = periodOfDated(one);
    return period !== null && period.from <= day && day < period.to;
  });
  if (version !== undefined) return { value: version, findings: [] };
  const values = { day: dayText(day), covered: coveredWords(versions) };
  return { value: null, findings: [disputeFinding('dispute/not-in-force', { path: ['versions'] }, values)] };
}
