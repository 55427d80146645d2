import { dayText, parseDay, type DayNumber } from '@unitbook/engine';
import {
  collectMeterFile,
  readRegisterCsv,
  type CollectedFile,
  type MeterSink,
  type Stream,
} from '@unitbook/meter-files';
import { describe, expect, it } from 'vitest';
import { countedAs, pointsOf } from './assign.ts';
import { lacksPoint, needsZone, ownSession, sessionOf, withChoices } from './session.ts';

const day = (text: string): DayNumber => parseDay(text) as DayNumber;

const stream = (register: string, rest: Partial<Stream> = {}): Stream => ({
  point: '',
  meter: '',
  register,
  quantity: 'import',
  rate: null,
  unit: 'kWh',
  ...rest,
});

function collected(offset: number | null, fill: (sink: MeterSink) => void): CollectedFile {
  const { sink, result } = collectMeterFile();
  fill(sink);
  return result({ offset });
}

/** Hours of 1 kWh each from a day on. */
const hours =
  (of: Stream, from: string, count: number) =>
  (sink: MeterSink): void => {
    const values = new Float64Array(count).fill(1);
    const start = day(from) * 1440;
    sink.intervals({ stream: of, start, minutes: 60, places: 0, values, qualities: null, line: 1 });
  };

describe('intervals', () => {
  // April has 720 hours, May 744.
  const fill = hours(stream('E1'), '2025-04-01', 720 + 744);

  it('are summed up once a closing day is chosen, on the clock of the file where that is local', () => {
    const session = sessionOf(collected(null, fill), []);
    expect(needsZone(session)).toBe(false);
    expect(session.intervals).toBeNull();
    const { intervals } = withChoices(session, { cycleDay: 1 });
    expect(intervals?.periods.map(({ period, import: taken }) => [dayText(period.to), taken])).toEqual([
      ['2025-05-01', '720'],
      ['2025-06-01', '744'],
    ]);
  });

  it('wait for a zone where the file goes by UTC, and follow it', () => {
    const session = withChoices(sessionOf(collected(0, fill), []), { cycleDay: 1 });
    expect(needsZone(session)).toBe(true);
    expect(session.intervals).toBeNull();
    expect(withChoices(session, { zone: 'nowhere' }).intervals).toBeNull();
    const { intervals } = withChoices(session, { zone: ' Europe/London ' });
    // Summer time is an hour ahead: the file begins at 01:00 of 1 April and ends at 01:00 of 1 June, so that
    // April lacks an hour.
    expect(intervals?.periods.map((period) => period.import)).toEqual(['719', '744']);
    expect(intervals?.findings.map(({ code }) => code)).toEqual(['meter-file/period-incomplete']);
  });

  it('say what days are covered where they fill no month', () => {
    const session = sessionOf(collected(null, hours(stream('E1'), '2025-04-02', 24)), []);
    const { intervals } = withChoices(session, { cycleDay: 1 });
    expect(intervals).toMatchObject({
      periods: [],
      span: { from: day('2025-04-02'), to: day('2025-04-03') },
    });
  });

  it('come to nothing, with the reason, where only net energy is there', () => {
    const net = hours(stream('N', { quantity: 'net' }), '2025-04-01', 720);
    const session = withChoices(sessionOf(collected(null, net), []), { cycleDay: 1 });
    expect(session.intervals).toMatchObject({ periods: [], span: null });
    expect(session.intervals?.findings.map(({ code }) => code)).toContain('meter-file/net');
    const [series] = session.file?.intervals ?? [];
    const counts = new Map(series === undefined ? [] : [[series.stream, 'import' as const]]);
    expect(withChoices(session, { counts }).intervals?.periods.map((one) => one.import)).toEqual(['720']);
  });
});

describe('several connections', () => {
  const reading = { minute: null, quality: 'actual', line: 1, day: day('2025-04-01') } as const;
  const file = collected(null, (sink) => {
    for (const point of ['A', 'B'])
      sink.register({
        ...reading,
        stream: stream('1.8.0', { point }),
        value: `${point === 'A' ? '1' : '2'}0`,
      });
    sink.register({ ...reading, stream: stream('3.8.0', { point: 'C', quantity: 'other' }), value: '5' });
  });

  it('wait for a choice, of those that count energy', () => {
    const session = sessionOf(file, []);
    expect(pointsOf(file)).toEqual(['A', 'B']);
    expect(lacksPoint(session)).toBe(true);
    const chosen = withChoices(session, { point: 'B' });
    expect(lacksPoint(chosen)).toBe(false);
    expect(chosen.registers.offers.map(({ row }) => row.import)).toEqual(['20']);
  });

  it('can have a register counted otherwise', () => {
    const [first, second] = file.registers.map(({ stream: one }) => one);
    const counting = { point: 'B', counts: new Map(first === undefined ? [] : [[first, 'export' as const]]) };
    expect([first, second].map((one) => one !== undefined && countedAs(one, counting))).toEqual([
      'export',
      'import',
    ]);
    const { registers } = withChoices(sessionOf(file, []), counting);
    expect(registers.offers.map(({ row }) => [row.import, row.export])).toEqual([['20', '10']]);
  });
});

it('takes the readings of our own list in order, and says which have no day', () => {
  const csv = readRegisterCsv(
    'date,import,export,event\n1/5/2025,2,0,\nsoon,3,0,\n2025-04-01,1,0,\n2025-05-02,2,0,final\n',
  );
  const { registers } = ownSession(csv);
  expect(registers.offers.map(({ day: on, row }) => [dayText(on), row.import])).toEqual([
    ['2025-04-01', '1'],
    ['2025-05-01', '2'],
  ]);
  expect(registers.events).toBe(1);
  expect(registers.findings).toMatchObject([{ code: 'reading/no-day', position: { line: 3, column: 1 } }]);
});
