import type { BatchOptions } from '../../apps/cli/src/batch/index.ts';
import { check, folder, type BatchCase, type Told } from './batch-case.ts';

/** A check with these options, of a table that nobody opens. */
const optioned = (options: Partial<BatchOptions>) => (): Promise<readonly Told[]> =>
  check({ rows: 'rows.csv', ...options });

/** Cases of what a check of a table says of its options, before it opens anything. */
export const BATCH_OPTION_CASES: readonly BatchCase[] = [
  {
    code: 'batch/options',
    when: 'a part that is not one',
    make: optioned({ part: { index: 3, count: 2 } }),
    at: '',
    found: 'part 3 of 2',
    expected: 'a part from 1 to as many as there are',
    remedy: 'Number the parts from 1.',
  },
  {
    code: 'batch/options',
    when: 'a part of standard input',
    make: optioned({ rows: '-', part: { index: 1, count: 2 } }),
    at: '',
    found: 'a part of standard input',
    expected: 'a file, of which every part reads its own rows',
    remedy: 'Name the file.',
  },
  {
    code: 'batch/options',
    when: 'findings that nobody can go on with',
    make: optioned({ isResumed: true }),
    at: '',
    found: 'a check to go on with, whose findings go to standard output',
    expected: 'a file of findings',
    remedy: 'Name it with --findings.',
  },
  {
    code: 'batch/options',
    when: 'a part of what is no plain file',
    make: optioned({ rows: folder(), part: { index: 1, count: 2 } }),
    at: '',
    found: 'a part of what is no plain file',
    expected: 'a file, of which every part reads its own rows',
    remedy: 'Name the file.',
  },
  {
    code: 'batch/options',
    when: 'findings over the table',
    make: optioned({ out: './rows.csv' }),
    at: '',
    found: 'one file for the table and the findings: ./rows.csv',
    expected: 'a file for each of them',
    remedy: 'Name another with --findings or --unread.',
  },
  {
    code: 'batch/options',
    when: 'findings over the tariff',
    make: optioned({ out: 'tariff.json', tariffFiles: ['./tariff.json'] }),
    at: '',
    found: 'one file for a tariff and the findings: tariff.json',
    expected: 'a file for each of them',
    remedy: 'Name another with --findings or --unread.',
  },
  {
    code: 'batch/options',
    when: 'findings into what is no file',
    make: optioned({ out: '/dev/null', side: 'unread.csv' }),
    at: '',
    found: 'the findings to /dev/null, which is no plain file',
    expected: 'a file, or the name of one that is to be made',
    remedy: 'Leave --findings out to have them printed.',
  },
];
