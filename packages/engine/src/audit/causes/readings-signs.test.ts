import { describe, expect, it } from 'vitest';
import domestic from '../../../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { parseDay, type DayNumber } from '../../quantity/index.ts';
import { makeRegister, type RegisterId } from '../../readings/index.ts';
import { readTariff, type TariffDocument } from '../../tariff/index.ts';
import type { Cause, CauseContext } from '../cause.ts';
import type { BillFacts, RegisterFacts } from '../facts.ts';
import { quotientOf } from '../printed.ts';
import { ANOTHER_METER } from './another-meter.ts';
import { DIGIT_ERROR } from './digit-error.ts';
import { ESTIMATED_READING } from './estimated-reading.ts';
import { EXPORT_COUNTED_LATE } from './export-counted-late.ts';
import { FROZEN_REGISTER } from './frozen-register.ts';
import { GENERATION_BILLED_AS_IMPORT } from './generation-billed-as-import.ts';
import { GENERATION_METER_WRONG } from './generation-meter-wrong.ts';
import { METER_REPLACED } from './meter-replaced.ts';
import { NET_REGISTER_AS_IMPORT } from './net-register-as-import.ts';
import { PHASE_WISE_REGISTERS } from './phase-wise-registers.ts';
import { ROLLOVER_AS_DIFFERENCE } from './rollover-as-difference.ts';
import { STALE_OPENING } from './stale-opening.ts';
import { STEP_BACK_AS_ROLLOVER } from './step-back-as-rollover.ts';

// What separates look-alikes: "Why a net-metered bill is wrong, or right but surprising" (project reference, 2025),
// section 2.7. Facts are those of its base month.

const tariff = readTariff(domestic).value?.document as TariffDocument;
const day = (value: string): DayNumber => parseDay(value) as DayNumber;
const shows = (id: RegisterId, previous: number, present: number): RegisterFacts => ({
  register: makeRegister({ id, digits: '5', decimals: '1', multiplyingFactor: '1' }),
  previous: previous * 1000,
  present: present * 1000,
  passed: false,
});
const FACTS: BillFacts = {
  tariff,
  period: { from: day('2025-05-01'), to: day('2025-05-31') },
  registers: {
    import: shows('import', 12_480, 12_892),
    export: shows('export', 8310, 8588),
    generation: shows('generation', 15_225, 15_805),
  },
  units: { import: 412_000, export: 278_000, generation: 580_000 },
  powers: {},
  opening: { credit: 35_000 },
  surplus: { kind: 'as-due' },
  accountLines: [],
  shown: {},
};
const BEFORE: BillFacts = {
  ...FACTS,
  period: { from: day('2025-04-01'), to: day('2025-05-01') },
  registers: {
    import: shows('import', 12_060, 12_480),
    export: shows('export', 7855, 8310),
    generation: shows('generation', 14_625, 15_225),
  },
  units: { import: 420_000, export: 455_000, generation: 600_000 },
};

const figures = (texts: Readonly<Record<string, string>>): CauseContext['printed'] =>
  new Map(Object.entries(texts).map(([name, text]) => [name, quotientOf(text)]));

function context(printed: Readonly<Record<string, string>>, more: Partial<CauseContext> = {}): CauseContext {
  return {
    printed: figures(printed),
    status: null,
    before: null,
    printedBefore: null,
    closingBefore: null,
    otherTariffs: [],
    connected: null,
    paidBefore: undefined,
    serials: {},
    ...more,
  };
}

/** What the variants of a cause are, with what speaks for them. */
const told = (cause: Cause, known: CauseContext, facts = FACTS): readonly string[] =>
  cause
    .variants(facts, known)
    .map(({ id, signs = [] }) => [id, ...signs.map(({ speaks }) => speaks)].join(' '));

describe('an estimate', () => {
  const printed = { 'units.import': '397', 'units.export': '265' };

  it('is for where the bill says so', () => {
    expect(told(ESTIMATED_READING, context(printed, { status: 'estimated' }))).toEqual(['both for']);
  });

  it('is not tried where the number does not look like one and no status is printed', () => {
    expect(told(ESTIMATED_READING, context(printed))).toEqual([]);
    expect(told(ESTIMATED_READING, context(printed, { status: 'actual' }))).toEqual([]);
  });

  it('is against where a round number is said to be read', () => {
    const round = { 'units.import': '400', 'units.export': '278' };
    expect(told(ESTIMATED_READING, context(round, { status: 'actual' }))).toEqual(['import against']);
    expect(told(ESTIMATED_READING, context(round))).toEqual(['import']);
  });

  it('is for where it is the number of the bill before once more', () => {
    const repeated = { 'units.import': '421', 'units.export': '278' };
    const printedBefore = figures({ 'units.import': '421' });
    expect(told(ESTIMATED_READING, context(repeated, { printedBefore }))).toEqual(['import for']);
  });

  it('needs printed units or a printed reading, which do not contradict each other', () => {
    const known = { status: 'estimated' } as const;
    expect(told(ESTIMATED_READING, context({ payable: '2830' }, known))).toEqual([]);
    const reading = { 'reading.import.present': '12910' };
    expect(told(ESTIMATED_READING, context(reading, known))).toEqual(['import-only for', 'import for']);
    const both = { ...reading, 'units.import': '397' };
    expect(told(ESTIMATED_READING, context(both, known))).toEqual([]);
  });

  it('proves nothing by the figures it was solved from', () => {
    const [variant] = ESTIMATED_READING.variants(FACTS, context(printed, { status: 'estimated' }));
    expect(variant?.fitted).toEqual([
      'units.import',
      'reading.import.present',
      'units.export',
      'reading.export.present',
    ]);
    expect(variant?.facts.registers['import']?.present).toBe(12_877_000);
  });
});

describe('another meter', () => {
  const printed = { 'reading.import.previous': '20411', 'reading.import.present': '20998' };
  const serials = (own: string, shown: string | null) => ({ grid: { own: [own], printed: shown } });

  it('is for where the printed number differs, against where it is the own one', () => {
    const known = (shown: string | null) => context(printed, { serials: serials('PB-77120', shown) });
    expect(told(ANOTHER_METER, known('PB-31807'))).toEqual(['printed for']);
    expect(told(ANOTHER_METER, known('PB-77120'))).toEqual(['printed against']);
    expect(told(ANOTHER_METER, known('pb 77120'))).toEqual(['printed against']);
    expect(told(ANOTHER_METER, known(null))).toEqual(['printed']);
  });

  it('is not tried where a reading is near one of the own registers', () => {
    const near = { 'reading.import.previous': '12480', 'reading.import.present': '20998' };
    expect(told(ANOTHER_METER, context(near))).toEqual([]);
    // The generation meter is no stranger.
    const made = { 'reading.import.previous': '15225', 'reading.import.present': '15805' };
    expect(told(ANOTHER_METER, context(made))).toEqual([]);
    const given = { ...printed, 'reading.export.previous': '8310', 'reading.export.present': '8588' };
    expect(told(ANOTHER_METER, context(given))).toEqual([]);
  });

  it('proves nothing by readings and units', () => {
    const [variant] = ANOTHER_METER.variants(FACTS, context(printed));
    expect(variant?.fitted).toContain('units.import');
    expect(variant?.facts.units).toEqual({ import: 587_000, export: 0, generation: 580_000 });
  });
});

describe('export that counts late', () => {
  const connected = day('2025-05-10');

  it('is for where the plant was connected inside the period', () => {
    expect(told(EXPORT_COUNTED_LATE, context({}, { connected }))).toEqual(['none for']);
  });

  it('is not tried where nobody knows the day, or where it comes later', () => {
    expect(told(EXPORT_COUNTED_LATE, context({}))).toEqual([]);
    expect(told(EXPORT_COUNTED_LATE, context({}, { connected: day('2025-05-31') }))).toEqual([]);
  });

  it('is tried a month later as long as no bill has counted any', () => {
    const earlier = { connected: day('2025-04-10') };
    const none = figures({ 'units.export': '0' });
    expect(told(EXPORT_COUNTED_LATE, context({}, { ...earlier, printedBefore: none }))).toEqual(['none for']);
    const some = figures({ 'units.export': '455' });
    expect(told(EXPORT_COUNTED_LATE, context({}, { ...earlier, printedBefore: some }))).toEqual([]);
  });

  it('begins at a printed reading that is later, or counts a part of the units', () => {
    const reading = context({ 'reading.export.previous': '8400' }, { connected });
    const [variant] = EXPORT_COUNTED_LATE.variants(FACTS, reading);
    expect([variant?.id, variant?.facts.units['export'], variant?.fitted]).toEqual([
      'reading',
      188_000,
      ['reading.export.previous'],
    ]);
    const part = EXPORT_COUNTED_LATE.variants(FACTS, context({ 'units.export': '188' }, { connected }));
    expect(part.map(({ id, fitted }) => [id, fitted])).toEqual([['part', ['units.export']]]);
  });
});

describe('the generation meter', () => {
  it('is billed as import for its number, against that of the two-way meter', () => {
    const known = (printed: string) =>
      context(
        {},
        {
          serials: {
            grid: { own: ['PB-77120'], printed },
            generation: { own: ['GN-40316'], printed: null },
          },
        },
      );
    expect(told(GENERATION_BILLED_AS_IMPORT, known('GN-40316'))).toEqual(['instead for', 'added']);
    expect(told(GENERATION_BILLED_AS_IMPORT, known('PB-77120'))).toEqual(['instead against', 'added']);
    expect(told(GENERATION_BILLED_AS_IMPORT, known('PB-31807'))).toEqual(['instead', 'added']);
  });

  it('counts too little for sure where more is given than made', () => {
    // 580 / 3 = 193 is less than 278.
    expect(told(GENERATION_METER_WRONG, context({}))).toEqual(['third for', 'zero for']);
    const little = { ...FACTS, units: { ...FACTS.units, export: 100_000 } };
    expect(told(GENERATION_METER_WRONG, context({}), little)).toEqual(['third', 'zero for']);
    const { generation: made, ...grid } = FACTS.units;
    expect(made).toBe(580_000);
    expect(told(GENERATION_METER_WRONG, context({}), { ...FACTS, units: grid })).toEqual([]);
  });

  it('counts without its factor where it has one', () => {
    const register = makeRegister({ id: 'generation', digits: '5', decimals: '1', multiplyingFactor: '40' });
    const shown = { ...shows('generation', 100, 120), register };
    const facts = {
      ...FACTS,
      registers: { ...FACTS.registers, generation: shown },
      units: { ...FACTS.units, generation: 800_000 },
    };
    const made = GENERATION_METER_WRONG.variants(facts, context({})).map(({ id, facts: changed }) => [
      id,
      changed.units['generation'],
    ]);
    // A third of 20 on the display is 6.6: 4,264 − 4,000 = 264.
    expect(made).toEqual([
      ['third', 264_000],
      ['zero', 0],
      ['factor', 20_000],
    ]);
  });
});

describe('phases one by one', () => {
  it('need import and export to be too large by the same', () => {
    const printed = { 'units.import': '532', 'units.export': '398' };
    expect(told(PHASE_WISE_REGISTERS, context(printed))).toEqual(['both']);
    expect(told(PHASE_WISE_REGISTERS, context({ ...printed, 'units.export': '397' }))).toEqual([]);
    expect(told(PHASE_WISE_REGISTERS, context({ 'units.import': '532' }))).toEqual([]);
    expect(told(PHASE_WISE_REGISTERS, context({ 'units.import': '400', 'units.export': '266' }))).toEqual([]);
  });
});

describe('opening readings', () => {
  it('are those of two bills ago, of some registers or of all', () => {
    expect(told(STALE_OPENING, context({}, { before: BEFORE }))).toEqual(['import', 'export', 'grid', 'all']);
    expect(told(STALE_OPENING, context({}))).toEqual([]);
  });

  it('say so where the bill before printed them', () => {
    const known = context(
      { 'reading.import.previous': '12910' },
      { printedBefore: figures({ 'reading.import.present': '12910' }) },
    );
    const wide = {
      ...FACTS,
      registers: { ...FACTS.registers, import: shows('import', 12_480, 13_000) },
      units: { ...FACTS.units, import: 520_000 },
    };
    expect(STALE_OPENING.variants(wide, known).map(({ what }) => what)).toEqual([
      'The opening reading is the closing one that the bill before printed, which the meter did not show',
    ]);
  });

  it('are not taken where nothing would be left to count', () => {
    // 12,910 is above the present reading.
    expect(told(STALE_OPENING, context({ 'reading.import.previous': '12910' }))).toEqual([]);
  });
});

describe('a full scale', () => {
  const wrapped = { ...shows('import', 99_870, 212), passed: true };
  const facts = {
    ...FACTS,
    registers: { ...FACTS.registers, import: wrapped },
    units: { ...FACTS.units, import: 342_000 },
  };

  it('is taken for a difference only where it was passed', () => {
    expect(told(ROLLOVER_AS_DIFFERENCE, context({}), facts)).toEqual(['import']);
    expect(told(ROLLOVER_AS_DIFFERENCE, context({}))).toEqual([]);
  });

  it('is passed by mistake only where a reading fell back', () => {
    expect(told(STEP_BACK_AS_ROLLOVER, context({}), facts)).toEqual([]);
    const back = { ...FACTS, registers: { import: shows('import', 12_960, 12_892) } };
    expect(told(STEP_BACK_AS_ROLLOVER, context({}), back)).toEqual(['import']);
  });
});

describe('a register that did not move', () => {
  it('cannot be frozen', () => {
    expect(told(FROZEN_REGISTER, context({}))).toEqual(['import', 'grid', 'all']);
    const still = { ...FACTS, registers: { import: shows('import', 12_480, 12_480) } };
    expect(told(FROZEN_REGISTER, context({}), still)).toEqual([]);
  });

  it('of import less export is no import where less was taken than given', () => {
    const surplus = { ...FACTS, units: { ...FACTS.units, import: 100_000 } };
    expect(told(NET_REGISTER_AS_IMPORT, context({}), surplus)).toEqual([]);
  });
});

describe('digits', () => {
  it('are tried in every way where nothing is printed, and once where it is', () => {
    expect(DIGIT_ERROR.variants(FACTS, context({})).length).toBeGreaterThan(10);
    const printed = { 'reading.import.present': '12982', 'units.import': '502', 'units.export': '278' };
    const readings = { ...printed, 'reading.export.present': '8588', 'reading.generation.present': '15805' };
    expect(told(DIGIT_ERROR, context(readings))).toEqual(['import present transposed 129820']);
  });

  it('are solved from units where no reading is printed', () => {
    // 512 − 412 = 100: the third digit of 12,892 was taken for 9.
    const [variant, ...others] = DIGIT_ERROR.variants(
      FACTS,
      context({ 'units.import': '512', 'units.export': '278', 'units.generation': '580' }),
    ).filter(({ id }) => id.startsWith('import'));
    expect([variant?.id, variant?.fitted, others]).toEqual([
      'import present digit 12992',
      ['units.import'],
      [],
    ]);
  });
});

describe('a replaced meter', () => {
  it('is tried only where one was replaced', () => {
    expect(told(METER_REPLACED, context({}))).toEqual([]);
    const stretches = [shows('import', 12_480, 12_690), shows('import', 7, 209)];
    const { generation } = FACTS.registers;
    const registers = generation === undefined ? {} : { generation };
    // Of export nothing was replaced: what would concern it is left out, and what is the same is told once.
    expect(told(METER_REPLACED, context({}), { ...FACTS, registers, stretches })).toEqual([
      'old-part',
      'new-part',
      'import-start',
      'across-import',
    ]);
  });
});
