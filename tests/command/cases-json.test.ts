import type { CheckedCasesDocument } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.ts';
import { sessionIo } from './session-io.ts';

const FOLDER = 'tariffs-examples/tarumira/taresco-domestic';

it('prints every case with its checks and its bills as exact text', async () => {
  const { io, printed } = sessionIo(new Map(), '');
  const status = await run(
    ['tariff', `${FOLDER}/tariff.json`, '--cases', `${FOLDER}/cases.json`, '--json'],
    io,
  );
  const document = JSON.parse(printed.out) as CheckedCasesDocument;
  expect([status, printed.err, document.format, document.tariff]).toEqual([
    0,
    '',
    'unitbook-checked-cases-1',
    'tarumira-domestic',
  ]);
  expect(document.cases.every(({ isReproduced }) => isReproduced === true)).toBe(true);
  const scaled = document.cases.find(({ id }) => id === '38-days');
  expect(scaled?.checks).toContainEqual({
    period: '1',
    what: 'line energy',
    expected: '702.00',
    got: '702',
    isSame: true,
  });
  const [month] = scaled?.months ?? [];
  expect([month?.from, month?.to, month?.passbook?.billed, month?.bill.sum]).toEqual([
    '2025-05-01',
    '2025-06-08',
    '170',
    '1021.12',
  ]);
  const energy = month?.bill.lines.find(({ id }) => id === 'energy');
  expect(energy?.inputs?.map(({ value }) => value)).toEqual(['190', '512']);
  expect(document.findings).toEqual([]);
});
