import { describe, expect, it } from 'vitest';
import { readTariff } from '@unitbook/engine';
import tariffText from '../../tariffs-examples/tarumira/taresco-two-ledgers/tariff.json?raw';
import { runTable } from './table-run.ts';

// By hand, under a bank of units and a bonus in money: 200 taken less 150 given are 50 units at 6.00, and 80.00 fixed:
// 380. 50 units banked leave 80; a bonus of 20 leaves 360; enough of either leaves 80, or 0.
const HEADER = 'account,from,to,import,export,generation,opening.bank,opening.bonus-money,printed.payable';
const row = (account: string, bank: string, bonus: string, payable: string): string =>
  `${account},2025-05-01,2025-06-01,200,150,0,${bank},${bonus},${payable}`;

async function check(...rows: readonly string[]) {
  const { value: tariff } = readTariff(tariffText);
  if (tariff === null) throw new Error('the example tariff cannot be read');
  const { lines } = await runTable(`${HEADER}\n${rows.join('\n')}\n`, { tariff, isEvery: true });
  return lines.map(({ verdict, alternatives }) => [verdict, alternatives]);
}

describe('a bank of which nobody knows what it held', () => {
  it('is known where it is given, ledger by ledger', async () => {
    expect(await check(row('A', '50', '0', '80'), row('B', '0', '20', '360'))).toEqual([
      ['right', undefined],
      ['right', undefined],
    ]);
  });

  it('makes no bill wrong', async () => {
    const [[verdict, alternatives] = []] = await check(row('A', '', '', '80'));
    expect([verdict, alternatives]).toEqual([
      'cannot-tell',
      [
        { ledger: 'bank', opening: '0', payable: '380' },
        { ledger: 'bank', opening: '200', payable: '80' },
        { ledger: 'bonus-money', opening: '380', payable: '0' },
      ],
    ]);
  });

  it('is one thing, and the bonus beside it another', async () => {
    const [[verdict, alternatives] = []] = await check(row('A', '0', '', '360'));
    expect([verdict, alternatives]).toEqual([
      'cannot-tell',
      [
        { ledger: 'bonus-money', opening: '0', payable: '380' },
        { ledger: 'bonus-money', opening: '380', payable: '0' },
      ],
    ]);
  });

  it('is not known behind a row that cannot be read', async () => {
    const april = row('A', '50', '0', '80').replace('2025-05-01,2025-06-01', '2025-04-01,2025-05-01');
    const june = row('A', '', '', '80').replace('2025-05-01,2025-06-01', '2025-06-01,2025-07-01');
    const [, may, last] = await check(april, row('A', '', '', '80').replace(',200,', ',2x,'), june);
    expect([may?.[0], last?.[0]]).toEqual(['unreadable', 'cannot-tell']);
  });
});
