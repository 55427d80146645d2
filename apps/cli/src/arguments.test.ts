import { describe, expect, it } from 'vitest';
import { readArguments } from './arguments.ts';

const NAMES = { readings: 'FILE', month: 'MONTH', json: null };
const read = (...argv: string[]) => readArguments(argv, NAMES);

describe('readArguments', () => {
  it('takes values behind a space or an equals sign, switches and other words', () => {
    const { values, switches, others, findings } = read(
      '--readings',
      'a.csv',
      '--month=2',
      '--json',
      'b.csv',
    );
    expect(Object.fromEntries(values)).toEqual({ readings: 'a.csv', month: '2' });
    expect([...switches]).toEqual(['json']);
    expect(others).toEqual(['b.csv']);
    expect(findings).toEqual([]);
  });

  it('takes an option that can be repeated as often as it stands, and no other', () => {
    const names = { quantity: 'NAME=VALUE', month: 'MONTH' };
    const argv = ['--quantity', 'a=1', '--month', '2', '--quantity=b=2', '--quantity'];
    const { lists, values, findings } = readArguments(argv, names, ['quantity']);
    expect(lists.get('quantity')).toEqual(['a=1', 'b=2']);
    expect(Object.fromEntries(values)).toEqual({ month: '2' });
    expect(findings.map(({ code }) => code)).toEqual(['command/option-without-value']);
    expect(readArguments(argv.slice(0, 5), names).findings.map(({ code }) => code)).toEqual([
      'command/option-twice',
    ]);
  });

  it('takes "-" for a value and everything behind "--" for words', () => {
    const { values, others } = read('--readings', '-', '--', '--json');
    expect(values.get('readings')).toBe('-');
    expect(others).toEqual(['--json']);
  });

  it('does not take the next option for a value', () => {
    const { switches, findings } = read('--readings', '--json', '--month');
    expect([...switches]).toEqual(['json']);
    expect(findings.map(({ code }) => code)).toEqual([
      'command/option-without-value',
      'command/option-without-value',
    ]);
  });

  it.each(['--constructor', '--__proto__', '--no-json', '-x'])('knows no %s', (word) => {
    expect(read(word).findings.map(({ code }) => code)).toEqual(['command/unknown-option']);
  });

  it('lists everything at once', () => {
    expect(read('--json=1', '--json', '--json', '--nothing').findings.map(({ code }) => code)).toEqual([
      'command/option-with-value',
      'command/option-twice',
      'command/unknown-option',
    ]);
  });
});
