import { describe, expect, it } from 'vitest';
import { accountText, changed, DEMO_TARIFF } from '../../../tests/support/demo.ts';
import { readHousehold } from './household.ts';

const READINGS = [{ date: '2025-04-01', import: '1', export: '2', generation: '3' }];

/** A household document: its tariff is text to be put in as it is. */
function documentWith(
  tariff: string,
  account = accountText(),
  readings: readonly unknown[] = READINGS,
): string {
  return `{\n"format": "unitbook-household-1",\n"readings": ${JSON.stringify(readings)},\n"account": ${account},\n"tariff": ${tariff}\n}`;
}

const told = (text: string) =>
  readHousehold(text).findings.map(({ code, position }) => `${String(position?.line)} ${code}`);

describe('a household in one file', () => {
  it('names the tariff that the program brings along', () => {
    const { value, findings } = readHousehold(documentWith('"tarumira-domestic"'));
    expect(findings).toEqual([]);
    expect([value.tariff, value.readings]).toEqual(['tarumira-domestic', READINGS]);
    expect(value.account?.sanctionedLoad).toBe(4000);
  });

  it('may hold the tariff itself', () => {
    const { value, findings } = readHousehold(documentWith(DEMO_TARIFF));
    expect(findings).toEqual([]);
    expect(value.tariff).toMatchObject({ document: { id: 'tarumira-domestic' } });
  });

  it('may hold what the plant should make; what is still to be typed in it holds no bill up', () => {
    const plant = (kWp: string): string =>
      documentWith('"tarumira-domestic"').replace(
        '"readings"',
        `"plant": { "format": "unitbook-plant-1", "capacity": [{ "kWp": "${kWp}" }] },\n"readings"`,
      );
    expect(readHousehold(plant('3.3')).value.plant?.capacities).toHaveLength(1);
    const half = readHousehold(plant(''));
    expect([half.value.plant, half.value.account?.sanctionedLoad]).toEqual([null, 4000]);
    expect(half.findings.map(({ position }) => position?.line)).toEqual([3]);
    expect(half.value.readings).toEqual(READINGS);
  });

  it('tells what is wrong with each part, in the place where it stands', () => {
    const account = accountText({ plantCapacity: '0' });
    const lines = account.split('\n').length;
    const tariff = changed(DEMO_TARIFF, '"currency": "INR"', '"currency": "INX"');
    // The account begins on line 4, its plant on its fifth line; the tariff follows, its currency on its eighth.
    expect(told(documentWith(tariff, account))).toEqual([
      '8 account/not-above-zero',
      `${String(3 + lines + 8)} tariff/unknown-currency`,
    ]);
  });

  it('keeps the tariff where the account cannot be used', () => {
    const { value } = readHousehold(documentWith(DEMO_TARIFF, accountText({ plantCapacity: '0' })));
    expect([value.account, value.tariff === null]).toEqual([null, false]);
  });

  it('has no account and no readings where their form is wrong', () => {
    const { value } = readHousehold(documentWith('"tarumira-domestic"', accountText(), [{ date: 5 }]));
    expect([value.account, value.readings]).toEqual([null, null]);
  });

  it.each(['', '{', '[]', '{}', '5', 'null'])('is nothing where the text is %s', (text) => {
    const { value, findings } = readHousehold(text);
    expect(value).toEqual({ tariff: null, account: null, readings: null, plant: null });
    expect(findings.length > 0).toBe(true);
  });
});
