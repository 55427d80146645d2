import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sessionIo } from './session-io.ts';
import { run } from '../../apps/cli/src/run.ts';

const TARIFF = 'tariffs-examples/tarumira/taresco-time-blocks/tariff.json';
const OFFER = JSON.parse(readFileSync('tariffs-examples/quotes/rooftop-4-kilowatt.json', 'utf8')) as Record<
  string,
  unknown
>;

const BATTERY = { capacity: '5', power: '2.5', efficiency: '85', cost: '100000' };
/** The demo quote under a tariff with time blocks: nothing rises, and own use is that of a profile. */
const quoteOf = (battery?: typeof BATTERY): string =>
  JSON.stringify({
    ...OFFER,
    tariff: undefined,
    selfUse: undefined,
    escalation: { charges: {}, basis: 'none' },
    policies: undefined,
    uncertainty: undefined,
    battery,
  });

const register = {
  digits: '5',
  decimals: '1',
  rates: [
    { id: '1', block: 'peak' },
    { id: '2', block: 'normal' },
    { id: '3', block: 'solar' },
  ],
};
const ACCOUNT = JSON.stringify({
  format: 'unitbook-account-1',
  id: 'TAR-40-00213',
  locale: 'en-IN',
  sanctionedLoad: '4',
  plantCapacity: '4',
  openingCredit: '0',
  meters: {
    grid: { serial: 'PB-1', multiplyingFactor: '1', import: register, export: register },
    generation: { serial: 'GN-1', multiplyingFactor: '1', generation: { digits: '5', decimals: '1' } },
  },
});
const READINGS = `date,import_1,import_2,import_3,export_1,export_2,export_3,generation
2025-04-01,0.0,0.0,0.0,0.0,0.0,0.0,0.0
2025-05-01,250.0,200.0,10.0,0.0,90.0,300.0,500.0
`;

/** 0.2 kWh in each hour of 2025, 1 from 18 to 22; made from 8 to 16, 1.5 an hour. */
const PROFILE = ['start,import,generation']
  .concat(
    Array.from({ length: 365 * 24 }, (_, at) => {
      const start = new Date(Date.UTC(2025, 0, 1, at)).toISOString().slice(0, 16).replace('T', ' ');
      const hour = at % 24;
      return `${start},${hour >= 18 && hour < 22 ? '1.0' : '0.2'},${hour >= 8 && hour < 16 ? '1.5' : '0.0'}`;
    }),
  )
  .join('\n');
const COLUMNS = JSON.stringify({
  format: 'unitbook-columns-1',
  confirmed: true,
  header: ['start', 'import', 'generation'],
  holds: 'intervals',
  delimiter: ',',
  decimalMark: '.',
  grouping: '',
  dateOrder: 'year-month-day',
  clock: 'local',
  zone: 'Asia/Kolkata',
  label: 'start',
  minutes: '60',
  columns: [{ is: 'date-time' }, { is: 'import', unit: 'kWh' }, { is: 'generation', unit: 'kWh' }],
});

const WORDS = ['promise', '--quote', 'quote.json', '--tariff', TARIFF];
const METERED = ['--account', 'account.json', '--readings', 'readings.csv'];
const PROFILED = ['--profile', 'profile.csv', '--profile-columns', 'columns.json'];

async function printed(words: readonly string[], battery?: typeof BATTERY) {
  const texts = {
    'quote.json': quoteOf(battery),
    'account.json': ACCOUNT,
    'readings.csv': READINGS,
    'profile.csv': PROFILE,
    'columns.json': COLUMNS,
  };
  const files = new Map(Object.entries(texts).map(([name, text]) => [name, { bytes: Buffer.from(text) }]));
  const session = sessionIo(files, '');
  const status = await run([...WORDS, ...words], session.io);
  return { ...session.printed, status };
}

describe('unitbook promise under time blocks', () => {
  it('splits what registers of rates tell, by the profile of the quote', async () => {
    const { out, status } = await printed([...METERED, ...PROFILED]);
    expect(status).toBe(0);
    // Worked out by hand in quote-promise-blocks.test.ts of the engine.
    expect(out).toMatch(/^Use +520 +570 +\+50 +\+290\.00 +\+32\.00$/m);
    expect(out).toMatch(/^Generation +510 +500 +−10 +\+15\.00 +−15\.00$/m);
    expect(out).toMatch(/^Used at home +104 +110 +\+6 +\+85\.00 +−11\.00$/m);
    expect(out).toMatch(/^Together +\+390\.00 +\+6\.00$/m);
    expect(out).toContain('What was used at home has in it when units were used');
    expect(out).not.toContain('battery');
  });

  it('tells what a battery loses', async () => {
    const { out } = await printed([...METERED, ...PROFILED], BATTERY);
    expect(out).toContain('Meters count what a battery loses as used at home');
    const json = await printed([...METERED, ...PROFILED, '--json'], BATTERY);
    const { lost } = JSON.parse(json.out) as { lost: { promised: string } };
    expect(lost.promised).toMatch(/^[1-9]\d*$/);
  });

  it('asks for the profile', async () => {
    const { err, status } = await printed(METERED);
    expect(status).toBe(2);
    expect(err).toContain('[quote/needs-profile]');
  });

  it('takes columns of a profile only beside one', async () => {
    const { err } = await printed([...METERED, '--profile-columns', 'columns.json']);
    expect(err).toContain('--profile-columns without --profile FILE');
  });
});
