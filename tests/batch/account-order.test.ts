import { describe, expect, it } from 'vitest';
import { runTable } from './table-run.ts';

const HEADER = 'account,from,to,import,export,sanctioned-load,opening,printed.payable';
/** May of an account of 4 kW: 110 units are billed, 50 × 3.00 + 60 × 4.80 and so on; whether it is right is no matter. */
const row = (account: string): string => `${account},2025-05-01,2025-06-01,298,150,4,38,1\n`;
const summaryOf = async (accounts: readonly string[], blockBytes?: number) => {
  const { summary } = await runTable(
    `${HEADER}\n${accounts.map(row).join('')}`,
    blockBytes === undefined ? {} : { blockBytes },
  );
  return [summary?.accounts, summary?.outOfOrder];
};

describe('the order of accounts', () => {
  it('is one by text, or one of numbers of different lengths', async () => {
    expect(await summaryOf(['A-1', 'A-10', 'A-2', 'B'])).toEqual([4, 0]);
    expect(await summaryOf(['8', '9', '10', '11', '100'])).toEqual([5, 0]);
    expect(await summaryOf(['only'])).toEqual([1, 0]);
    expect(await summaryOf([])).toEqual([0, 0]);
  });

  it('is none where an account stands below one that comes after it both ways', async () => {
    expect(await summaryOf(['A', 'B', 'A'])).toEqual([3, 1]);
    // By text 10 stands below 9, and 3 stands below 20 not; by length first 3 does.
    expect(await summaryOf(['9', '10', '20', '3'])).toEqual([4, 1]);
    expect(await summaryOf(['D', 'C', 'B', 'A'])).toEqual([4, 3]);
  });

  it('goes on from block to block', async () => {
    for (const bytes of [1, 60, 120]) {
      expect(await summaryOf(['A', 'B', 'C', 'A', 'C', 'B'], bytes)).toEqual([6, 2]);
      expect(await summaryOf(['A', 'B', 'C', 'D', 'E', 'F'], bytes)).toEqual([6, 0]);
    }
  });

  it('is not broken by an account that begins anew behind a row that cannot be used', async () => {
    const text = `${HEADER}\n${row('A')}A,May,2025-06-01,1,1,4,0,1\n${row('A').replace('05-01', '06-01').replace('06-01,298', '07-01,298')}`;
    const { summary } = await runTable(text);
    expect(summary?.outOfOrder).toBe(0);
  });
});
