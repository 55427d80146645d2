import { readFileSync } from 'node:fs';
import { ENERGY_FINDINGS, READING_FINDINGS } from '@unitbook/engine';
import { COLUMNS, FILE_FINDINGS } from '@unitbook/meter-files';
import { describe, expect, it } from 'vitest';
import { billCommand } from '../../apps/cli/src/commands/bill.ts';
import { demoCommand } from '../../apps/cli/src/commands/demo.ts';
import { parquetCommand } from '../../apps/cli/src/commands/parquet.ts';
import { plantCommand } from '../../apps/cli/src/commands/plant.ts';
import { quoteCommand } from '../../apps/cli/src/commands/quote.ts';
import { readingsCommand } from '../../apps/cli/src/commands/readings.ts';
import { tariffCommand } from '../../apps/cli/src/commands/tariff.ts';
import { COMMAND_FINDINGS } from '../../apps/cli/src/findings.ts';

const page = (name: string): string =>
  readFileSync(new URL(`../../docs/reference/${name}.md`, import.meta.url), 'utf8');

/** The codes that have a row in a table. */
const rows = (text: string): readonly string[] =>
  [...text.matchAll(/^\| `([a-z-]+\/[a-z0-9-]+)` \|/gm)].map((match) => match[1] ?? '').sort();

describe('docs/reference/readings.md', () => {
  it('has one row for every code, and no other', () => {
    const codes = [READING_FINDINGS, ENERGY_FINDINGS, FILE_FINDINGS].flatMap((kinds) => Object.keys(kinds));
    expect(rows(page('readings'))).toEqual(codes.sort());
  });

  it('names every column', () => {
    for (const column of COLUMNS) expect(page('readings')).toContain(`| \`${column}\` |`);
  });
});

describe('docs/reference/command.md, with the page on Parquet', () => {
  it('have one row for every code, and no other', () => {
    expect(rows(`${page('command')}\n${page('parquet')}`)).toEqual(Object.keys(COMMAND_FINDINGS).sort());
  });

  it.each([
    { command: billCommand, own: 'command' },
    { command: readingsCommand, own: 'command' },
    { command: plantCommand, own: 'command' },
    { command: quoteCommand, own: 'command-2' },
    { command: parquetCommand, own: 'parquet' },
    { command: tariffCommand, own: 'command' },
    { command: demoCommand, own: 'command' },
  ])('names every option of $command.name, as its help does', ({ command, own }) => {
    for (const [name, value] of Object.entries(command.options)) {
      const option = value === null ? `--${name}` : `--${name} ${value}`;
      expect(page(own)).toContain(`\`${option}\``);
      expect(command.help).toContain(option);
    }
  });
});
