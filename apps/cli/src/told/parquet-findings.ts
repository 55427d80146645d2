import type { findingMaker } from '@unitbook/engine';
import { of } from './values.ts';

/** What can be wrong where bills or findings are kept in Parquet, by code. */
export const PARQUET_FINDINGS = {
  'command/parquet-not-installed': {
    severity: 'error',
    text: () => ({
      found: 'no @duckdb/node-api, which reads and writes Parquet',
      expected: 'this optional part to be installed',
      remedy: 'Type npm install @duckdb/node-api where unitbook is, or keep the bills as CSV.',
    }),
  },
  'command/parquet-table': {
    severity: 'error',
    text: (v) => ({
      found: `a table that cannot be read: ${of(v, 'reason')}`,
      expected: 'a file in Parquet',
      remedy: 'Check that it is the right file, and whole.',
    }),
  },
  'command/parquet-column': {
    severity: 'error',
    text: (v) => ({
      found: `a column "${of(v, 'column')}" of the type ${of(v, 'type')}`,
      expected: 'text, whole numbers, decimals or dates, which are exact',
      remedy: `Write it as DECIMAL or as text, or name it "note.${of(v, 'column')}", which is passed by.`,
    }),
  },
  'command/parquet-findings': {
    severity: 'error',
    text: (v) => ({
      found: `findings that cannot be put into a table: ${of(v, 'reason')}`,
      expected: 'what unitbook check --batch wrote, and a folder that can be written to',
      remedy: 'Check the names of both files, and the room on the disk.',
    }),
  },
  'command/parquet-same-file': {
    severity: 'error',
    text: () => ({
      found: 'one file for the findings and for the table of them',
      expected: 'a file for each',
      remedy: 'Name another file after --to.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
