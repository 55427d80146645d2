import { readTariff, type Tariff, type TimeBlocks } from '@unitbook/engine';

/** The four blocks of a calendar that is as the float loop has it in its table. */
export const TIME_BLOCKS: TimeBlocks = {
  clause: 'T 1',
  blocks: ['night', 'day', 'noon', 'evening'].map((id) => ({ id, label: id })),
  calendar: [
    { block: 'night', from: '22:00', to: '06:00' },
    { block: 'day', from: '06:00', to: '10:00' },
    { block: 'noon', from: '10:00', to: '16:00' },
    { block: 'day', from: '16:00', to: '18:00' },
    { block: 'evening', from: '18:00', to: '22:00' },
  ],
};

const BLOCKS = TIME_BLOCKS.blocks.map(({ id }) => id);
const RATES = ['3.2', '5.6', '4.1', '8.45'];
const clause = 'T 1';
const words = (id: string) => ({ id, label: id, clause });

/** Export set off inside its block, then the bank against each block in turn; the bank lapses with March. */
const SETTLEMENT = {
  from: '2020-01-01',
  scheme: 'ledgers',
  clause,
  quantities: [
    {
      is: 'netting',
      ...words('net'),
      supply: [...BLOCKS.map((block) => `export@${block}`), 'bank'],
      demand: BLOCKS.map((block) => `import@${block}`),
      routes: [
        ...BLOCKS.map((block) => ({ from: `export@${block}`, to: `import@${block}` })),
        ...BLOCKS.map((block) => ({ from: 'bank', to: `import@${block}` })),
      ],
    },
    { is: 'sum', ...words('left'), of: BLOCKS.map((block) => `net.export@${block}`) },
  ],
  ledgers: [
    {
      ...words('bank'),
      unit: 'kWh',
      adds: 'left',
      keeps: 'net.bank',
      close: { clause, on: ['03-31'], surplus: 'lapses' },
    },
  ],
};

const CHARGES = [
  ...BLOCKS.map((block, at) => ({
    ...words(block),
    kind: 'per-unit',
    on: `net.import@${block}`,
    rate: RATES[at],
  })),
  { ...words('fixed'), kind: 'fixed', amount: '120' },
  { ...words('tax'), kind: 'percentage', percent: '5', of: [...BLOCKS, 'fixed'] },
];

/** A tariff by time blocks with one bank, made up for measuring. */
export function blockTariff(): Tariff {
  const document = {
    format: 'unitbook-tariff-1',
    id: 'blocks',
    name: 'Time blocks with one bank, made up for measuring',
    supplier: 'nobody',
    invented: true,
    currency: 'INR',
    sources: { T: { title: 'Made up for measuring', publisher: 'this project', year: '2026' } },
    units: { clause, decimals: '3', rounding: 'down', roundedAt: 'difference' },
    rounding: { clause, line: { step: '0.01', mode: 'half-up' }, total: { step: '1', mode: 'half-up' } },
    timeBlocks: TIME_BLOCKS,
    versionChange: { rule: 'in-force-on-first-day', clause },
    versions: [{ name: 'ONE', from: '2020-01-01', clause, charges: CHARGES }],
    settlements: [SETTLEMENT],
  };
  const { value, findings } = readTariff(JSON.stringify(document));
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}
