import { beforeAll, describe, expect, it } from 'vitest';
import { summaryPage } from '../../apps/cli/src/batch/index.ts';
import { checkCommand } from '../../apps/cli/src/commands/check.ts';
import { runTable, type TableRun } from '../batch/table-run.ts';
import { blocksOf, page } from './pages.ts';
import { below, firstCells } from './tables.ts';

const text = page('reference/batch.md');
const block = (name: string): string => {
  const [found] = blocksOf(text).filter(({ words }) => words === name);
  if (found === undefined) throw new Error(`No block "${name}"`);
  return found.text;
};

/** Options of `unitbook check` for bills of one account, which a table has no use for. */
const OF_ONE_ACCOUNT = ['bills', 'bill', 'memo', 'letter', 'dispute', 'on', 'locale'];

describe('docs/reference/batch.md', () => {
  let checked: TableRun | null = null;
  beforeAll(async () => {
    checked = await runTable(block('csv table'));
  });

  it('shows what is found in its table', () => {
    const [wrong] = checked?.lines ?? [];
    expect(wrong).toEqual(JSON.parse(block('json finding')));
    expect(checked?.lines.map(({ verdict }) => verdict)).toEqual(['wrong', 'cannot-tell', 'unreadable']);
  });

  it('shows the beginning of its summary', () => {
    const lines = checked?.summary == null ? [] : summaryPage(checked.summary);
    expect(`${lines.join('\n')}\n`).toContain(block('text summary'));
  });

  it('says of every field of a finding what it means', () => {
    const [wrong = {}, untold = {}, unread = {}] = checked?.lines ?? [];
    const told = firstCells(below(text, '### A bill'));
    expect([...Object.keys(wrong), ...Object.keys(untold)].filter((key) => !told.includes(key))).toEqual([]);
    const [explanation = {}] = wrong['explained'] as readonly object[];
    expect(firstCells(below(text, '### An explanation'))).toEqual(Object.keys(explanation));
    const fields = [...firstCells(below(text, '### A row that cannot be used'))];
    expect(fields.sort()).toEqual(Object.keys(unread).sort());
  });

  it('has a JSON line that can be read', async () => {
    const { summary } = await runTable(block('json'), { form: 'ndjson' });
    expect(summary).toMatchObject({ rows: 1, codes: {} });
  });

  it('names every option of a table', () => {
    const options = Object.entries(checkCommand.options)
      .filter(([name]) => !OF_ONE_ACCOUNT.includes(name))
      .map(([name, value]) => (value === null ? `--${name}` : `--${name} ${value}`));
    expect(options.filter((option) => !below(text, '## Options').includes(`\`${option}\``))).toEqual([]);
  });
});
