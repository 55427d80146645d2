import type { DuckDBConnection } from '@duckdb/node-api';

/** Cells of rows, as text; null: there is none. */
export type TextRow = readonly (string | null)[];

/** What reads and writes Parquet. Names of columns and files can hold anything. */
export interface ParquetEngine {
  /** Names and types of what a query gives. */
  readonly columns: (query: string) => Promise<readonly ParquetColumn[]>;
  /** Rows of a query whose columns are all text, some at a time, in its order. */
  readonly rows: (query: string) => AsyncIterable<readonly TextRow[]>;
  readonly run: (statement: string) => Promise<void>;
  readonly close: () => void;
}

/** A column of a table in Parquet. */
export interface ParquetColumn {
  readonly name: string;
  /** As SQL writes it: VARCHAR, DECIMAL(10,2), DATE ... */
  readonly type: string;
}

/** Something that the engine could not do, in its own words. */
export class ParquetTrouble extends Error {}

/**
 * A name as SQL takes it.
 *
 * @example
 * quotedName('printed.line."a"') //=> '"printed.line.""a"""'
 */
export const quotedName = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/**
 * A text as SQL takes it, such as the name of a file.
 *
 * @example
 * quotedText("bills of '24") //=> "'bills of ''24'"
 */
export const quotedText = (text: string): string => `'${text.replaceAll("'", "''")}'`;

/** What an engine says, without the statement that it repeats. */
function troubleOf(error: unknown): ParquetTrouble {
  const message = error instanceof Error ? error.message : String(error);
  const [first = ''] = message.split('\n');
  return new ParquetTrouble(first.trim().replace(/\.$/, ''));
}

/** Do something with the engine. */
async function tried<Result>(work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    throw troubleOf(error);
  }
}

async function* rowsOf(connection: DuckDBConnection, query: string): AsyncGenerator<readonly TextRow[]> {
  const result = await tried(() => connection.stream(query));
  for (;;) {
    const chunk = await tried(() => result.fetchChunk());
    if (chunk === null || chunk.rowCount === 0) return;
    yield chunk.getRows() as readonly TextRow[];
  }
}

/**
 * Open the engine that reads and writes Parquet: DuckDB, an optional part.
 *
 * @returns null where it is not installed
 */
export async function openEngine(): Promise<ParquetEngine | null> {
  const api = await import('@duckdb/node-api').catch(() => null);
  if (api === null) return null;
  const connection = await (await api.DuckDBInstance.create(':memory:')).connect();
  return {
    columns: async (query) => {
      const described = await tried(() => connection.runAndReadAll(`DESCRIBE ${query}`));
      return described.getRows().map(([name, type]) => ({ name: String(name), type: String(type) }));
    },
    rows: (query) => rowsOf(connection, query),
    run: async (statement) => {
      await tried(() => connection.run(statement));
    },
    close: () => {
      connection.closeSync();
    },
  };
}
