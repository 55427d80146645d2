import { describe, expect, it } from 'vitest';
import { keepBook, type Book } from '@unitbook/engine';
import { makeNotation } from '../../apps/cli/src/render/notation.ts';
import { passbookLines } from '../../apps/cli/src/render/passbook.ts';
import { yearSummary, yearTable } from '../../apps/cli/src/render/year.ts';
import { accountOf, changed, goodTariff } from '../support/demo.ts';
import { LEDGER_READINGS, LEDGER_TARIFF } from '../support/ledgers.ts';

const notation = makeNotation('en-IN', 2);

function bookOf(text: string, count = LEDGER_READINGS.length): Book {
  const readings = LEDGER_READINGS.slice(0, count);
  return keepBook({ account: accountOf(), tariff: goodTariff(text), readings }).value;
}

/** A rule of unit netting up to the end of February, and the ledgers after it. */
const LATER_LEDGERS = changed(
  LEDGER_TARIFF,
  '"settlements": [\n    {\n      "from": "2024-04-01",',
  '"settlements": [\n    { "from": "2024-04-01", "through": "2025-02-28", "scheme": "unit-netting", "clause": "TR 8",\n' +
    '      "close": { "clause": "TR 8", "on": "every-period", "surplus": "lapses" } },\n' +
    '    {\n      "from": "2025-03-01",',
).replace('"on": "net.import"', '"on": "import"');

describe('the year in short', () => {
  it('has the balance of every ledger in place of units billed and credit', () => {
    expect(yearTable(bookOf(LEDGER_TARIFF).months, notation)).toEqual([
      '                                         Bank of                 Without',
      '            Period Days Taken Given Made   units Rewards Payable   solar Saved',
      '------------------------------------------------------------------------------',
      '1 Feb – 1 Mar 2025   28   100   160  250      60   80.00      60   1,010   950',
      '1 Mar – 1 Apr 2025   31   110    70  200       0  115.00      10   1,260 1,250',
      '1 Apr – 1 May 2025   30    90    30  150       0    0.00     230   1,110   880',
      '------------------------------------------------------------------------------',
      '           3 bills   89   300   260  600                     300   3,380 3,080',
    ]);
  });

  it('has both where ledgers follow a passbook', () => {
    // Every unit taken at 5.00, less the rewards of the same month: 60 + 500 − 80, 60 + 550 − 35, 60 + 450 − 15.
    expect(yearTable(bookOf(LATER_LEDGERS).months, notation)).toEqual([
      '                                                       Bank of                 Without',
      '            Period Days Taken Given Made Billed Credit   units Rewards Payable   solar Saved',
      '--------------------------------------------------------------------------------------------',
      '1 Feb – 1 Mar 2025   28   100   160  250      0      0       –       –     480   1,010   530',
      '1 Mar – 1 Apr 2025   31   110    70  200      –      –       0    0.00     575   1,260   685',
      '1 Apr – 1 May 2025   30    90    30  150      –      –       0    0.00     495   1,110   615',
      '--------------------------------------------------------------------------------------------',
      '           3 bills   89   300   260  600      –                          1,550   3,380 1,830',
    ]);
  });
});

describe('the passbook', () => {
  it('stands above the ledgers that follow it', () => {
    const lines = passbookLines(bookOf(LATER_LEDGERS).months, notation);
    expect(lines.filter((line) => /^(PASSBOOK|LEDGER|\d)/.test(line))).toEqual([
      'PASSBOOK OF UNITS',
      '1 Feb – 1 Mar 2025       0   160     100    0     60       0   100      0',
      'LEDGER Bank of units, in units',
      '1 Mar – 1 Apr 2025        0      0     0     0       0        0',
      '1 Apr – 1 May 2025        0      0     0     0       0        0',
      'LEDGER Rewards, in INR',
      '1 Mar – 1 Apr 2025     0.00   0.00  0.00  0.00    0.00     0.00',
      '1 Apr – 1 May 2025     0.00   0.00  0.00  0.00    0.00     0.00',
    ]);
  });

  it('is left out where nothing is carried from month to month', () => {
    expect(passbookLines([], notation)).toEqual([]);
  });
});

describe('what the next bill pays', () => {
  it('is said of money as of units', () => {
    const rewards = '"unit": "money", "clause": "TR 5.5"';
    const paid =
      `${rewards}, "close": { "clause": "TR 5.6", "on": ["02-28"], "surplus": "paid" }, ` +
      '"payment": { "clause": "TR 5.7", "label": "Rewards paid out", "inBill": "next" }';
    const text = changed(LEDGER_TARIFF, rewards, paid);
    expect(yearSummary(bookOf(text, 2), notation).join(' ')).toContain(
      '80.00 of credit are left over at the end; the next bill pays them out [TR 5.7].',
    );
  });
});
