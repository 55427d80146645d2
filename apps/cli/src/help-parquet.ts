/** What `unitbook parquet --help` prints. */
export const PARQUET_HELP = `unitbook parquet reads tables of printed bills that are kept in Parquet, and writes findings
into Parquet. It needs an optional part, which npm installs where it can:
@duckdb/node-api.

  unitbook parquet --rows FILE
  unitbook parquet --findings FILE --to FILE

For instance, from Parquet to Parquet:
  unitbook parquet --rows bills.parquet >bills.csv
  unitbook check --batch bills.csv --tariff tariff.json --findings found.ndjson
  unitbook parquet --findings found.ndjson --to found.parquet

Files
  --rows FILE      a table of printed bills in Parquet, with the columns that
                   unitbook check --batch takes: text, whole numbers, decimals and
                   dates. It is printed as CSV, its rows in their order
  --findings FILE  findings of unitbook check --batch
  --to FILE        the table in Parquet to write them into, amounts as text

Exit status: 0 done, 2 could not be done.
`;
