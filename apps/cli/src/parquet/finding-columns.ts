import { quotedText } from './engine.ts';

/** A list of some texts by name, as SQL writes it. */
const listOf = (...names: readonly string[]): string =>
  `STRUCT(${names.map((name) => `"${name}" VARCHAR`).join(', ')})[]`;

const CAUSES = listOf('cause', 'name', 'variant', 'what', 'amount');

/**
 * The columns of findings in Parquet, by the names that they have as JSON, see `billLine` and `unreadLine`. Amounts
 * are texts there, and stay texts: whoever needs a decimal knows how many places it is to have.
 */
const FINDING_COLUMNS: Readonly<Record<string, string>> = {
  account: 'VARCHAR',
  from: 'DATE',
  to: 'DATE',
  verdict: 'VARCHAR',
  printed: 'VARCHAR',
  right: 'VARCHAR',
  difference: 'VARCHAR',
  favour: 'VARCHAR',
  differs: listOf('figure', 'printed', 'right'),
  explained: `STRUCT("confidence" VARCHAR, "causes" ${CAUSES}, "rounding" VARCHAR, "rest" VARCHAR)[]`,
  decides: 'VARCHAR[]',
  alternatives: listOf('ledger', 'opening', 'payable'),
  findings: listOf('code', 'found', 'expected', 'remedy'),
  line: 'BIGINT',
  column: 'VARCHAR',
  code: 'VARCHAR',
  found: 'VARCHAR',
  expected: 'VARCHAR',
  remedy: 'VARCHAR',
};

/**
 * The statement that writes findings into a table in Parquet, in their order. What a part of a table came to, a line
 * of its own at the end, is no finding.
 *
 * @param from  findings of a check, a JSON object on each line
 * @param to    the file to write
 */
export function writeStatement(from: string, to: string): string {
  const columns = Object.entries(FINDING_COLUMNS).map(
    ([name, type]) => `${quotedText(name)}: ${quotedText(type)}`,
  );
  const lines = `read_json(${quotedText(from)}, format = 'newline_delimited', columns = {${columns.join(', ')}})`;
  return `COPY (SELECT * FROM ${lines} WHERE verdict IS NOT NULL) TO ${quotedText(to)} (FORMAT parquet)`;
}
