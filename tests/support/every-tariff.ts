import {
  addDays,
  parseDay,
  readTariff,
  runBill,
  type BillFacts,
  type DayNumber,
  type Period,
  type RunBasis,
  type TariffDocument,
} from '@unitbook/engine';
import { FROM_NOTHING } from '../published/cause-bills.ts';

/** The text of every example tariff, by its path. */
export const TARIFF_TEXTS: Readonly<Record<string, string>> = import.meta.glob<string>(
  '../../tariffs-examples/*/*/tariff.json',
  { query: '?raw', import: 'default', eager: true },
);

/** 412 taken, 278 given and 580 made in 38 days, shared among time blocks; 35 in every ledger. */
function factsIn(document: TariffDocument, period: Period): BillFacts {
  const blocks = (document.timeBlocks?.blocks ?? []).map(({ id }) => id);
  const units: Record<string, number> = { import: 412_000, export: 278_000, generation: 580_000 };
  blocks.forEach((block, at) => {
    const others = blocks.length - 1;
    units[`import@${block}`] = at === 0 ? 412_000 - 100_000 * others : 100_000;
    units[`export@${block}`] = at === 0 ? 278_000 - 50_000 * others : 50_000;
  });
  for (const measure of Object.keys(document.measures ?? {})) units[measure] = 100_000;
  const ledgers = document.settlements.flatMap((rule) =>
    rule.scheme === 'unit-netting' ? ['credit'] : (rule.ledgers ?? []).map(({ id }) => id),
  );
  return {
    tariff: document,
    period,
    registers: {},
    units,
    powers: { 'sanctioned-load': 4000, 'plant-capacity': 5000 },
    opening: Object.fromEntries(ledgers.map((id) => [id, 35_000])),
    surplus: { kind: 'as-due' },
    accountLines: [],
    shown: {},
  };
}

/** What tariffs ask of an account: when it joined, and the day on which its bank closes. */
export const BASIS: RunBasis = { ...FROM_NOTHING, account: { since: '2020-01-01', settlementDay: '03-31' } };

/** Prices of single months are known for a few months only: the first days from which the tariff bills. */
export function factsOf(document: TariffDocument): BillFacts {
  const begin = parseDay(document.versions.at(-1)?.from ?? '') as DayNumber;
  const starts = [60, ...Array.from({ length: 60 }, (_, month) => month * 30 + 1)];
  const all = starts.map((days) =>
    factsIn(document, { from: addDays(begin, days), to: addDays(begin, days + 38) }),
  );
  return all.find((facts) => runBill(facts, BASIS) !== null) ?? (all[0] as BillFacts);
}

/** The tariff of an example. */
export function documentOf(text: string): TariffDocument {
  const { value } = readTariff(text);
  if (value === null) throw new Error('an example tariff cannot be read');
  return value.document;
}
