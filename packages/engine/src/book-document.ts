import { dayText, exactText, type Figure, type Finding } from './quantity/index.ts';
import type { Bill } from './bill/index.ts';
import type { LedgerEntry, PassbookEntry } from './settlement/index.ts';
import type { Book, BookMonth } from './book.ts';

/** A figure as JSON: numbers as exact text. */
export interface FigureDocument {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly unit: string;
  readonly operation: string;
  readonly clause?: string;
  readonly parameters?: readonly {
    readonly name: string;
    readonly value: string;
    readonly unit: string;
    readonly clause: string;
  }[];
  readonly choice?: {
    readonly by: string;
    readonly value: string;
    readonly above?: string;
    readonly upTo?: string;
  };
  readonly rounding?: {
    readonly from: string;
    readonly step: string;
    readonly mode: string;
    readonly clause: string;
  };
  readonly inputs?: readonly FigureDocument[];
}

/** Which rates a quantity reached. */
function choiceDocument({ choice }: Figure): Pick<FigureDocument, 'choice'> {
  if (choice === null || choice === undefined) return {};
  const { by, above, upTo } = choice;
  const bounds = {
    ...(above === null ? {} : { above: above.text }),
    ...(upTo === null ? {} : { upTo: upTo.text }),
  };
  return { choice: { by: by.id, value: exactText(by.numerator, by.denominator), ...bounds } };
}

/** A figure as a plain object for JSON, with everything it follows from. */
function figureDocument(figure: Figure): FigureDocument {
  const { rounding } = figure;
  return {
    id: figure.id,
    label: figure.label,
    value: exactText(figure.numerator, figure.denominator),
    unit: figure.unit,
    operation: figure.operation,
    ...(figure.clause === '' ? {} : { clause: figure.clause }),
    ...(figure.parameters.length === 0
      ? {}
      : {
          parameters: figure.parameters.map(({ name, text, unit, clause }) => ({
            name,
            value: text,
            unit,
            clause,
          })),
        }),
    ...choiceDocument(figure),
    ...(rounding === null
      ? {}
      : {
          rounding: {
            from: exactText(rounding.numerator, rounding.denominator),
            step: rounding.step,
            mode: rounding.mode,
            clause: rounding.clause,
          },
        }),
    ...(figure.inputs.length === 0 ? {} : { inputs: figure.inputs.map(figureDocument) }),
  };
}

/** A figure whose inputs stand beside it in the document already. */
function withoutInputs(figure: Figure): FigureDocument {
  return Object.fromEntries(
    Object.entries(figureDocument(figure)).filter(([key]) => key !== 'inputs'),
  ) as unknown as FigureDocument;
}

const optional = (figure: Figure | null): FigureDocument | null =>
  figure === null ? null : figureDocument(figure);

/** A bill as a plain object for JSON, each line with its derivation. */
export function billDocument(bill: Bill) {
  return {
    currency: bill.currency,
    lines: bill.lines.map(({ figure, version, counts }) => ({ version, counts, ...figureDocument(figure) })),
    sum: exactText(bill.sum.numerator, bill.sum.denominator),
    roundingDifference: bill.roundingDifference === null ? null : withoutInputs(bill.roundingDifference),
    payable: withoutInputs(bill.payable),
  };
}

const PASSBOOK_COLUMNS = [
  'opening',
  'imported',
  'exported',
  'setOff',
  'creditUsed',
  'billed',
  'paid',
  'lapsed',
  'closing',
] as const satisfies readonly (keyof PassbookEntry)[];

const LEDGER_COLUMNS = [
  'opening',
  'added',
  'used',
  'paid',
  'lapsed',
  'closing',
] as const satisfies readonly (keyof LedgerEntry)[];

/** Figures of an entry by the names of its columns, as exact texts. */
export function columnTexts<Column extends string>(
  entry: Readonly<Record<Column, Figure>>,
  columns: readonly Column[],
): Record<Column, string> {
  const texts = columns.map((column) => [
    column,
    exactText(entry[column].numerator, entry[column].denominator),
  ]);
  return Object.fromEntries(texts) as Record<Column, string>;
}

/** An entry of the passbook as a plain object for JSON. */
export function passbookDocument(entry: PassbookEntry) {
  return { ...columnTexts(entry, PASSBOOK_COLUMNS), isClosed: entry.isClosed };
}

/** An entry of a ledger as a plain object for JSON. */
export function ledgerDocument(entry: LedgerEntry) {
  const { id, label, unit, isClosed } = entry;
  return { id, label, unit, ...columnTexts(entry, LEDGER_COLUMNS), isClosed };
}

function monthDocument(month: BookMonth) {
  const { energy, ratios, passbook, ledgers, quantities, bill, withoutSolar, savings } = month;
  return {
    from: dayText(energy.period.from),
    to: dayText(energy.period.to),
    days: String(energy.days),
    isEstimated: energy.isEstimated,
    energy: {
      import: figureDocument(energy.import),
      export: figureDocument(energy.export),
      generation: optional(energy.generation),
      selfConsumption: optional(energy.selfConsumption),
      totalUse: optional(energy.totalUse),
      selfConsumptionShare: optional(ratios.selfConsumptionShare),
      selfSufficiency: optional(ratios.selfSufficiency),
      specificYield: optional(ratios.specificYield),
    },
    passbook: passbook === null ? null : passbookDocument(passbook),
    ledgers: ledgers.map(ledgerDocument),
    quantities: columnTexts(quantities, Object.keys(quantities)),
    bill: billDocument(bill),
    withoutSolar: withoutSolar === null ? null : billDocument(withoutSolar),
    savings:
      savings === null
        ? null
        : {
            saving: exactText(savings.saving.numerator, savings.saving.denominator),
            fromSelfConsumption: exactText(
              savings.fromSelfConsumption.numerator,
              savings.fromSelfConsumption.denominator,
            ),
            fromExport: exactText(savings.fromExport.numerator, savings.fromExport.denominator),
          },
  };
}

/** An account book as JSON, every number as exact text. */
export type BookDocument = ReturnType<typeof bookDocument>;

/**
 * Put an account book and its findings into a plain object for JSON: every number as exact text, a
 * decimal where it ends and a fraction such as "190/3" where it does not.
 */
export function bookDocument(book: Book, findings: readonly Finding[]) {
  return {
    format: 'unitbook-book-1',
    account: book.account.document.id,
    tariff: book.tariff.document.id,
    months: book.months.map(monthDocument),
    paymentsDue: book.paymentsDue.map(({ units, rate, clause }) => ({
      units: exactText(units.numerator, units.denominator),
      rate,
      clause,
    })),
    findings,
  };
}
