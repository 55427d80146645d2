import type { AccountDocument, PlantDocument, ReadingRow, TariffDocument } from '@unitbook/engine';

/** The form of a saved household that this version reads and writes. */
export const HOUSEHOLD_FORMAT = 'unitbook-household-1';

/**
 * Everything a homeowner typed, as typed: numbers stay text, half-typed ones too. Never changed in
 * place: every edit makes a new one.
 */
export interface Household {
  readonly format: typeof HOUSEHOLD_FORMAT;
  /** The name of an example, a tariff document of the homeowner's own, or '' before one is chosen. */
  readonly tariff: string | TariffDocument;
  readonly account: AccountDocument;
  readonly readings: readonly ReadingRow[];
  /** What the plant should make, and its diary; left out until somebody types it. */
  readonly plant?: PlantDocument;
}

/** A reading with nothing typed yet. */
export const BLANK_ROW: ReadingRow = { date: '', import: '', export: '', generation: '' };

/** Whether a row is the last reading of a meter or the first of one, and closes no month. */
export const isEvent = ({ event }: ReadingRow): boolean => event !== undefined;

/**
 * Whether nothing at all was typed in a row: such a row is not a reading yet. That a meter was changed is
 * something, numbers or none.
 */
export function isBlankRow(row: ReadingRow): boolean {
  const { rates } = row;
  const typed = [row.date, row.import, row.export, row.generation, row.printedDays];
  if (rates !== undefined) typed.push(...Object.values(rates).flatMap((texts) => Object.values(texts ?? {})));
  return !isEvent(row) && typed.every((text) => (text ?? '').trim() === '');
}

/**
 * A household with nothing typed: two blank readings, which make the first bill.
 *
 * @param locale  how its numbers are grouped, such as "en-IN"
 */
export function emptyHousehold(locale: string): Household {
  const register = { digits: '5', decimals: '1' } as const;
  return {
    format: HOUSEHOLD_FORMAT,
    tariff: '',
    account: {
      format: 'unitbook-account-1',
      id: '',
      name: '',
      locale,
      sanctionedLoad: '',
      plantCapacity: '',
      openingCredit: '0',
      meters: {
        grid: { serial: '', multiplyingFactor: '1', import: register, export: register },
        generation: { serial: '', multiplyingFactor: '1', generation: register },
      },
    },
    readings: [BLANK_ROW, BLANK_ROW],
  };
}

/** A household as the text of a file: what is saved in the browser and what is exported. */
export function householdText(household: Household): string {
  return `${JSON.stringify(household, null, 2)}\n`;
}
