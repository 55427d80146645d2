import { expect, it } from 'vitest';
import { openSource, type MeterSource, type Opened } from './open-source.ts';

const typed = (text: string): MeterSource => ({ name: '', blob: new Blob([text]) });
const named = (text: BlobPart): MeterSource => ({ name: 'a.csv', blob: new Blob([text]) });

function open(source: MeterSource, isStopped = (): boolean => false): Promise<Opened> {
  return openSource(source, { progress: () => undefined, isStopped });
}

const codes = (opened: Opened): string[] =>
  'findings' in opened ? opened.findings.map(({ code }) => code) : [];

it('reads a list of registers by its kind', async () => {
  const opened = await open(named('2025-05-01\n1.8.0 4342.1 kWh\n'));
  expect(opened).toMatchObject({ kind: 'file', told: { kind: 'register-list' } });
  const values =
    opened.kind === 'file' ? opened.file.registers.map(({ readings }) => readings[0]?.value) : [];
  expect(values).toEqual(['4342.1']);
});

it('takes what is typed for a list of registers even where little tells', async () => {
  expect(codes(await open(named('12892.4')))).toEqual(['meter-file/kind-not-known']);
  const opened = await open(typed('12892.4'));
  expect(opened).toMatchObject({ kind: 'file', told: { kind: 'register-list', why: 'it was typed' } });
  expect(codes(opened)).toContain('obis/line-unclear');
});

it('hands on the head of a table, and reads it by a layout', async () => {
  const text = 'when;a;b\n13.5.2025 0:15;1,5;2,5\n';
  expect(await open(named(text))).toMatchObject({ kind: 'table', head: text });
});

it('reads our own list, and knows a book of ours', async () => {
  expect(await open(named('date,import,export\n2025-05-01,1,2\n'))).toMatchObject({
    kind: 'own',
    csv: { value: [{ date: '2025-05-01', import: '1', export: '2' }] },
  });
  expect(await open(named('{\n  "format": "unitbook-household-1"'))).toMatchObject({ kind: 'book' });
});

it('refuses what is empty and what is no text, and stops when asked', async () => {
  expect(codes(await open(named('')))).toEqual(['meter-file/empty']);
  expect(codes(await open(typed(' \n')))).toEqual(['meter-file/empty']);
  const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]);
  expect(codes(await open(named(png)))).toEqual(['meter-file/not-text']);
  expect(await open(typed('1.8.0 1'), () => true)).toEqual({ kind: 'stopped' });
});

it('says how far it is, a piece at a time', async () => {
  const done: number[] = [];
  const line = '1.8.0 4342.1 kWh\n';
  const text = `2025-05-01\n${line.repeat(40_000)}`;
  const request = { progress: (bytes: number) => void done.push(bytes), isStopped: () => false };
  await openSource(named(text), request);
  // 11 + 40000 × 17 = 680,011 bytes: a piece of 524,288 and the rest.
  expect(done).toEqual([524_288, 680_011]);
});
