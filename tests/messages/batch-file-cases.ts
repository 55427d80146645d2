import { truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { batchFinding, FileTrouble, joinParts, troubleFindings } from '../../apps/cli/src/batch/index.ts';
import { DEMO_TARIFF, goodTariff } from '../support/demo.ts';
import { APRIL, check, folder, HEADER, MAY, toldOf, type BatchCase, type Told } from './batch-case.ts';

/** A check to go on with, after something was changed. */
const resumed =
  (change: (paths: { readonly rows: string; readonly out: string }) => void) =>
  async (): Promise<readonly Told[]> => {
    const own = folder();
    const paths = { rows: join(own, 'rows.csv'), out: join(own, 'found.ndjson') };
    writeFileSync(paths.rows, `${HEADER}\n${APRIL.replace(',180', ',181')}\n`);
    await check(paths);
    change(paths);
    return check({ ...paths, isResumed: true });
  };

/** What is said where the system refuses a file of a check that can be resumed, or of one that cannot. */
const refused =
  (code: string, isResumable = true) =>
  (): Promise<readonly Told[]> => {
    const error = Object.assign(new Error(code), { code, syscall: 'write' });
    const told = troubleFindings(new FileTrouble('found.ndjson', 'write', error), isResumable);
    return Promise.resolve(told.map(({ finding }) => toldOf(finding)));
  };

/** What is said of parts, one line after the other. */
const joined = async (...texts: readonly string[]): Promise<readonly Told[]> => {
  const lines = async function* (): AsyncGenerator<string> {
    for (const text of texts) yield await Promise.resolve(text);
  };
  const { problems } = await joinParts(lines(), () => Promise.resolve(), goodTariff(DEMO_TARIFF).document);
  return problems.map((problem) => toldOf(batchFinding('batch/parts', { path: [] }, { problem })));
};

const WRITABLE = 'room and leave to write';
const MAKE_ROOM = 'Make room, and go on with --resume: what is written stays.';
const GIVE_LEAVE = 'Give leave to write there, or name another file.';

/** A file that the system refuses, with a word for it. */
const fileCase = (when: string, own: Omit<BatchCase, 'code' | 'when' | 'at'>): BatchCase => ({
  code: 'batch/file',
  when,
  at: '',
  ...own,
});

const TROUBLE_CASES: readonly BatchCase[] = [
  fileCase('no folder for the findings', {
    make: () => {
      const own = folder();
      writeFileSync(join(own, 'rows.csv'), `${HEADER}\n`);
      return check({ rows: join(own, 'rows.csv'), out: join(own, 'nowhere', 'found.ndjson') });
    },
    found: 'no folder of this name',
    expected: 'a folder that is there',
    remedy: 'Make the folder, or name another.',
  }),
  fileCase('a folder', {
    make: refused('EISDIR'),
    found: 'a folder',
    expected: 'the name of a file',
    remedy: 'Name a file.',
  }),
  fileCase('no permission', {
    make: refused('EACCES'),
    found: 'permission denied',
    expected: WRITABLE,
    remedy: GIVE_LEAVE,
  }),
  fileCase('a disk that is only read', {
    make: refused('EROFS'),
    found: 'a disk that is only read',
    expected: WRITABLE,
    remedy: GIVE_LEAVE,
  }),
  fileCase('a full disk', {
    make: refused('ENOSPC'),
    found: 'no space is left on the disk',
    expected: WRITABLE,
    remedy: MAKE_ROOM,
  }),
  fileCase('a full disk, and nothing to go on with', {
    make: refused('ENOSPC', false),
    found: 'no space is left on the disk',
    expected: WRITABLE,
    remedy: 'Make room, and check again.',
  }),
  fileCase('a quota that is used up', {
    make: refused('EDQUOT'),
    found: 'the quota of the disk is used up',
    expected: WRITABLE,
    remedy: MAKE_ROOM,
  }),
  fileCase('more than a file can hold', {
    make: refused('EFBIG'),
    found: 'a file larger than the disk allows',
    expected: WRITABLE,
    remedy: 'Write to another disk, or in parts with --part.',
  }),
  fileCase('anything else that the system says', {
    make: refused('EXDEV'),
    found: 'EXDEV',
    expected: 'a file that can be written',
    remedy: 'Name another file.',
  }),
];

const ALL_PARTS = 'the findings of every part of one check, each done to its end, once, and in their order';
const PART_AGAIN = 'Name every part once and in order; check one again that is missing or was broken off.';

const PART_CASES: readonly BatchCase[] = [
  {
    code: 'batch/parts',
    when: 'a part that was broken off',
    make: () => joined('{"account":"TAR-41-00001","verdict":"wrong"}'),
    at: '',
    found: 'no line that says what the rows of a part came to',
    expected: ALL_PARTS,
    remedy: PART_AGAIN,
  },
];

const SAME_CHECK = 'the table, the tariff and the files with which the check was begun';
const BEGIN_ANEW = 'Begin anew, without --resume.';

const RESUME_CASES: readonly BatchCase[] = [
  {
    code: 'batch/cannot-resume',
    when: 'a table that was changed',
    make: resumed((paths) => {
      writeFileSync(paths.rows, `${HEADER}\n${APRIL}\n${MAY}\n`);
    }),
    at: '',
    found: 'the journal of a check of another table, tariff or choice of options',
    expected: SAME_CHECK,
    remedy: BEGIN_ANEW,
  },
  {
    code: 'batch/cannot-resume',
    when: 'findings that were cut',
    make: resumed((paths) => {
      truncateSync(paths.out, 10);
    }),
    at: '',
    found: 'fewer findings than its journal tells of',
    expected: SAME_CHECK,
    remedy: BEGIN_ANEW,
  },
  {
    code: 'batch/cannot-resume',
    when: 'rows set aside that were cut',
    make: resumed((paths) => {
      truncateSync(`${paths.out}.unread.csv`, 10);
    }),
    at: '',
    found: 'fewer rows that cannot be used than its journal tells of',
    expected: SAME_CHECK,
    remedy: BEGIN_ANEW,
  },
  {
    code: 'batch/cannot-resume',
    when: 'a journal that is none',
    make: resumed((paths) => {
      writeFileSync(`${paths.out}.journal`, '{"tally":');
    }),
    at: '',
    found: 'a file that is no journal',
    expected: SAME_CHECK,
    remedy: BEGIN_ANEW,
  },
];

/** Cases of what a check of a table says of its files and its parts. */
export const BATCH_FILE_CASES: readonly BatchCase[] = [...TROUBLE_CASES, ...PART_CASES, ...RESUME_CASES];
