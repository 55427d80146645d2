import type { Finding, Outcome } from '../quantity/index.ts';
import { documentFindings } from './check-document.ts';
import { readInForce, type InForce } from './dated.ts';
import { documentFinding } from './document-findings.ts';
import { firstFindings } from './many-findings.ts';
import { inFileOrder, readDocument } from './read-document.ts';
import { tariffSchema, type SettlementRule, type TariffDocument, type TariffVersion } from './schema.ts';
import { childAt, locate, type SourceText } from './source-text.ts';
import { tariffLimitFindings } from './tariff-limits.ts';

/** A tariff that has been read and checked: the document, and its dated parts in order of time. */
export interface Tariff {
  readonly document: TariffDocument;
  readonly versions: readonly InForce<TariffVersion>[];
  readonly settlements: readonly InForce<SettlementRule>[];
}

/** A tariff that was read, with its text: `locate` puts findings about it in their place. */
export interface ReadTariff extends Outcome<Tariff | null> {
  readonly source: SourceText;
}

/** What keeps a document from being read at all: one that has to be put together first, or is too large. */
function unreadFindings(source: SourceText): readonly Finding[] {
  const base = source.root === undefined ? undefined : childAt(source.root, 'extends');
  if (base === undefined) return tariffLimitFindings(source);
  const values = { id: typeof base.value === 'string' ? base.value : '' };
  return [documentFinding('document/extends-another', { path: ['extends'] }, values)];
}

/**
 * Read a tariff document and list everything that is wrong with it.
 *
 * @param text  the JSON file, whole
 * @returns     the tariff, or null when anything is wrong; findings with line and column, in file order, of more
 *              than a thousand the first; one that is larger than tariffs are is not read
 * @example
 * readTariff('{}').findings.length > 5 //=> true
 */
export function readTariff(text: string): ReadTariff {
  const read = readDocument(text, tariffSchema, unreadFindings);
  const built = read.mended === null ? { value: null, findings: [] } : assemble(read.mended);
  const findings = inFileOrder(
    firstFindings([...read.findings, ...built.findings]).map((one) => locate(read.source, one)),
  );
  return { value: findings.length === 0 ? built.value : null, findings, source: read.source };
}

/** Put the dated parts of a well-shaped document in order of time. */
function assemble(document: TariffDocument): Outcome<Tariff> {
  const versions = readInForce<TariffVersion>(document.versions, {
    path: ['versions'],
    one: 'version of the charges in force',
    several: 'versions of the charges in force',
    name: (version) => `"${version.name}"`,
  });
  const settlements = readInForce<SettlementRule>(document.settlements, {
    path: ['settlements'],
    one: 'settlement rule in force',
    several: 'settlement rules in force',
    name: (rule) => `the settlement from ${rule.from}`,
  });
  return {
    value: { document, versions: versions.value, settlements: settlements.value },
    findings: [...documentFindings(document), ...versions.findings, ...settlements.findings],
  };
}
