import {
  addQuotients,
  type DayNumber,
  type Figure,
  type Finding,
  type Quotient,
  ZERO,
} from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import type { Account } from './readings/index.ts';
import {
  CAUSES,
  FIGURE,
  type Cause,
  billReference,
  disputeVersionOn,
  makeFinding,
  reportDocument,
  sumRefunds,
  type BillFinding,
  type BillsReport,
  type DisputeDocument,
  type FindingTerms,
  type LaterEffects,
  type ReportRules,
  type SupplierReply,
  type UnreadFigure,
} from './audit/index.ts';
import { billDocument, ledgerDocument, passbookDocument } from './book-document.ts';
import type { CheckedAccount } from './check-account.ts';
import type { CheckedBill } from './check-bill.ts';
import { undecidedBill } from './check-report-undecided.ts';
import type { BillRun } from './check-run.ts';

/** What a report about checked bills is made of. */
export interface ReportInput {
  readonly account: Account;
  readonly tariff: Tariff;
  /** As {@link checkAccountBills} returns them, in order of time. */
  readonly checked: CheckedAccount;
  /** The day of the report: interest runs up to it. */
  readonly on: DayNumber;
  /** The rules for disputes of the place; left out: none are known. */
  readonly dispute?: DisputeDocument | null;
  /** The causes that were tried; left out: all that are known. */
  readonly causes?: readonly Cause[];
  /** Evidence that is at hand, in the words of the causes. */
  readonly held?: readonly string[];
  /** What each bill did to others, in the order of the bills; left out: the chain was not looked at. */
  readonly effects?: readonly (LaterEffects | null)[];
  /** What the supplier said to each bill, in the order of the bills; left out: nothing yet. */
  readonly replies?: readonly (SupplierReply | null)[];
  /** The printed figures that cannot be read, in the order of the bills; left out: all of them were read. */
  readonly unread?: readonly (readonly UnreadFigure[])[];
  /** How far an amount could be off and still count as right; left out: nothing. */
  readonly tolerance?: Quotient;
}

/** Lines of the same charge under several versions, as their sum. */
function summed(inputs: readonly Figure[], { id, label, unit, clause }: Figure): Figure {
  const { numerator, denominator } = addQuotients(inputs);
  const plain = { operation: 'sum', inputs, parameters: [], rounding: null } as const;
  return { id, label, unit, clause, numerator, denominator, ...plain };
}

/** The lines of a charge as one figure: those of several versions are summed. */
function lineFigures({ month }: BillRun): ReadonlyMap<string, Figure> {
  const byCharge = new Map<string, readonly Figure[]>();
  for (const { figure, counts } of month.bill.lines) {
    if (counts) byCharge.set(figure.id, [...(byCharge.get(figure.id) ?? []), figure]);
  }
  return new Map(
    [...byCharge].map(([id, inputs]) => {
      const [first] = inputs as readonly [Figure, ...Figure[]];
      return [FIGURE.line(id), inputs.length === 1 ? first : summed(inputs, first)] as const;
    }),
  );
}

/** Figures of a right bill with their working, by name. */
function derivedFigures(run: BillRun): ReadonlyMap<string, Figure> {
  const { passbook, ledgers, bill } = run.month;
  const credit: readonly (readonly [string, Figure])[] =
    passbook === null
      ? []
      : [
          [FIGURE.units('billed'), passbook.billed],
          [FIGURE.opening('credit'), passbook.opening],
          [FIGURE.closing('credit'), passbook.closing],
        ];
  return new Map([
    ...credit,
    ...ledgers.flatMap(
      ({ id, opening, closing }) =>
        [
          [FIGURE.opening(id), opening],
          [FIGURE.closing(id), closing],
        ] as const,
    ),
    ...lineFigures(run),
    ['sum', bill.sum],
    ['payable', bill.payable],
  ]);
}

/** What all findings of an account have in common. */
type AccountTerms = Omit<FindingTerms, 'id' | 'before' | 'derived' | 'effects' | 'reply'>;

/** Makes findings one after the other, and numbers them. */
class Findings {
  readonly made: BillFinding[] = [];
  readonly problems: Finding[] = [];
  private readonly terms: AccountTerms;

  constructor(terms: AccountTerms) {
    this.terms = terms;
  }

  add(checked: CheckedBill, own: Pick<FindingTerms, 'before' | 'effects' | 'reply'>): void {
    if (checked.right === null) return;
    const id = `F-${String(this.made.length + 1).padStart(2, '0')}`;
    const derived = derivedFigures(checked.right);
    const { value, findings } = makeFinding(checked, { ...this.terms, ...own, id, derived });
    if (value !== null) this.made.push(value);
    this.problems.push(...findings);
  }
}

function rulesOn(
  dispute: DisputeDocument | null,
  on: DayNumber,
): { readonly rules: ReportRules | null; readonly findings: readonly Finding[] } {
  if (dispute === null) return { rules: null, findings: [] };
  const { value: version, findings } = disputeVersionOn(dispute, on);
  return { rules: version === null ? null : { document: dispute, version }, findings };
}

const isWrong = ({ verdict }: CheckedBill): boolean => verdict === 'wrong' || verdict === 'follows';
const isRight = ({ verdict }: CheckedBill): boolean =>
  verdict === 'right' || verdict === 'right-but-surprising';

/**
 * Report on the checked bills of an account: a finding for each that is wrong, in whosever favour, what is to be paid
 * back with interest, those that are right and those of which it cannot be said.
 *
 * @param input  bills in order of time, and the day of the report
 */
export function reportBills(input: ReportInput): BillsReport {
  const {
    account,
    tariff,
    checked,
    on,
    dispute = null,
    causes = CAUSES,
    held = [],
    effects = [],
    replies = [],
    unread = [],
  } = input;
  const { rules, findings: ofRules } = rulesOn(dispute, on);
  const meter = account.document.meters.grid.serial;
  const terms = { account: account.document.id, meter, causes, on, held, rules: rules?.version ?? null };
  const findings = new Findings(terms);
  const { bills } = checked;
  bills.forEach((bill, at) => {
    const own = { before: bills[at - 1]?.printed ?? null, effects: effects[at] ?? null };
    if (isWrong(bill)) findings.add(bill, { ...own, reply: replies[at] ?? null });
  });
  const unreadOf = (at: number): readonly UnreadFigure[] => unread[at] ?? [];
  // Of a figure that cannot be read nobody knows whether it is right.
  const isSurelyRight = (bill: CheckedBill, at: number): boolean =>
    isRight(bill) && unreadOf(at).length === 0;
  const refunds = findings.made.flatMap(({ refund }) => (refund === null ? [] : [refund]));
  return {
    account: account.document.id,
    supplier: tariff.document.supplier,
    tariff: { id: tariff.document.id, name: tariff.document.name },
    currency: tariff.document.currency,
    on,
    tolerance: input.tolerance ?? ZERO,
    findings: findings.made,
    right: bills.filter(isSurelyRight).map(({ printed, surprises }) => ({
      bill: billReference(printed),
      surprises,
    })),
    undecided: bills.flatMap((bill, at) =>
      isWrong(bill) || isSurelyRight(bill, at) ? [] : [undecidedBill(bill, unreadOf(at))],
    ),
    refund: refunds.length === 0 ? null : sumRefunds(refunds, rules?.version.interest ?? null),
    rules,
    problems: [...ofRules, ...findings.problems, ...checked.findings],
  };
}

/** The right bill of a period with its working. */
function rightDocument({ printed, verdict, right }: CheckedBill) {
  const { number, from, to } = printed.document;
  const month = right?.month ?? null;
  return {
    number: number ?? null,
    from,
    to,
    verdict,
    passbook: month?.passbook == null ? null : passbookDocument(month.passbook),
    ledgers: (month?.ledgers ?? []).map(ledgerDocument),
    bill: month === null ? null : billDocument(month.bill),
  };
}

/** A report on checked bills as JSON, every number as exact text. */
export type CheckResultDocument = ReturnType<typeof checkResultDocument>;

/**
 * Put a report on checked bills into a plain object for JSON: findings, refund and rules, and the right bill of every
 * period with its working.
 *
 * @param report   of those bills
 * @param checked  the bills it was made of
 */
export function checkResultDocument(report: BillsReport, { bills }: Pick<CheckedAccount, 'bills'>) {
  return { format: 'unitbook-check-result-1', ...reportDocument(report), bills: bills.map(rightDocument) };
}
