import { addQuotients, figureValue, type Quotient, signOf } from '../../quantity/index.ts';
import type { BillFinding, RightBill } from './bill-finding.ts';
import type { BillsReport } from './bills-report.ts';
import { surpriseWords } from '../surprises/surprise-words.ts';
import { findingSection, verdictWords } from './finding-memo.ts';
import { findingSentences, foundWords } from './finding-sentences.ts';
import { refundRows } from './refund-words.ts';
import {
  billWords,
  capital,
  clauseWords,
  dayWords,
  insideSentence,
  moneyWords,
  type ReportNotation,
} from './report-words.ts';
import { listed, paragraph, tabled, type SheetSection } from './sheet.ts';
import { clauseReference } from './source-of-clause.ts';
import { LOCAL_RULES_CAUTION, stepWords } from './step-words.ts';

const section = (id: string, title: string, parts: SheetSection['parts']): readonly SheetSection[] =>
  parts.length === 0 ? [] : [{ id, title, parts }];

/** A bill that is right, with what may surprise on it. */
const rightWords = ({ bill, surprises }: RightBill, notation: ReportNotation): string =>
  [billWords(bill, notation), ...surprises.map((one) => surpriseWords(one, notation))]
    .map(capital)
    .join('. ');

function scopeSection(report: BillsReport, notation: ReportNotation): readonly SheetSection[] {
  const { account, supplier, tariff, findings, right, undecided, on } = report;
  const all = findings.length + right.length + undecided.length;
  const count = `${notation.number(String(all))} printed ${all === 1 ? 'bill' : 'bills'}`;
  const first = `Account ${account}, ${supplier}, ${tariff.name}. ${count}, checked on ${dayWords(on, notation)}.`;
  const answers = findings.map(
    (one: BillFinding) => `${one.id}, ${billWords(one.bill, notation)}. ${verdictWords(one, notation)}`,
  );
  const found = findings.length === 0 ? 'No bill was found wrong.' : '';
  return section('scope', 'What was checked', [
    ...paragraph(first),
    ...paragraph(found),
    ...listed('Found wrong, in whosever favour:', answers),
    ...listed(
      'Found right:',
      right.map((one) => rightWords(one, notation)),
    ),
  ]);
}

function undecidedSection({ undecided }: BillsReport, notation: ReportNotation): readonly SheetSection[] {
  const items = undecided.map(({ bill, payable, alternatives, why, unread }) => {
    const each = alternatives.map(
      (one) =>
        `${figureValue(one.payable, notation)} if ${one.label.toLowerCase()} is ${figureValue(one.opening, notation)}`,
    );
    const should =
      payable === null ? '' : `by what is known, ${figureValue(payable, notation)} is to be paid`;
    const known = each.length > 1 ? [each.join(', ')] : [should];
    const open = each.length > 1 ? [] : why.map((one) => insideSentence(foundWords(one, notation)));
    const illegible = unread.map(
      ({ label, finding }) => `“${label}” cannot be read: ${insideSentence(foundWords(finding, notation))}`,
    );
    const said = [...known, ...illegible, ...open].filter((text) => text !== '').join('; ');
    return `${capital(billWords(bill, notation))}: ${said}`;
  });
  return section('undecided', 'What cannot be said', listed('Bills of which too little is known:', items));
}

/** What each cause comes to in all bills that it is the surest explanation of. */
function causeRows(
  findings: readonly BillFinding[],
  notation: ReportNotation,
): readonly (readonly string[])[] {
  const byName = new Map<string, { readonly bills: number; readonly amounts: readonly Quotient[] }>();
  for (const { name, amount } of findings.flatMap(({ explanations }) => explanations[0]?.causes ?? [])) {
    const { bills, amounts } = byName.get(name) ?? { bills: 0, amounts: [] };
    byName.set(name, { bills: bills + 1, amounts: amount === null ? amounts : [...amounts, amount] });
  }
  return [...byName].map(([name, { bills, amounts }]) => [
    name,
    notation.number(String(bills)),
    amounts.length === 0 ? 'not known' : moneyWords(addQuotients(amounts), notation),
  ]);
}

function totalSection({ refund, findings }: BillsReport, notation: ReportNotation): readonly SheetSection[] {
  if (refund === null || findings.length < 2) return [];
  return section('total', 'In all', [
    ...tabled(['To be set right', 'Amount'], refundRows(refund, notation), [1]),
    ...tabled(['Cause', 'Bills', 'Adds'], causeRows(findings, notation), [1, 2]),
  ]);
}

function stepsSection({ rules }: BillsReport, notation: ReportNotation): readonly SheetSection[] {
  if (rules === null) return section('steps', 'Who to write to', paragraph(LOCAL_RULES_CAUTION));
  const { document, version } = rules;
  const { steps, lateFee } = version;
  const clause = clauseReference(version.clause, document.sources, version.from);
  const fee =
    lateFee === undefined
      ? ''
      : `Late fee: ${notation.number(lateFee.percent)} % a month on ${lateFee.on} (${lateFee.clause}).`;
  return section('steps', 'Who to write to', [
    ...paragraph(`${document.name}, ${document.place}: ${clauseWords(clause, notation)}.`),
    ...listed(
      'The usual steps:',
      steps.map((step) => stepWords(step, notation)),
    ),
    ...paragraph(fee),
    ...paragraph(LOCAL_RULES_CAUTION),
  ]);
}

function methodSection(report: BillsReport, notation: ReportNotation): readonly SheetSection[] {
  const { tariff, problems, tolerance } = report;
  const off = `An amount that is off by no more than ${moneyWords(tolerance, notation)} counts as right.`;
  return section('method', 'How it was worked out', [
    ...paragraph(
      `Each bill was made anew from readings, credit brought forward and the tariff “${tariff.name}”, in exact numbers that are rounded only where a clause says so. Then it was made wrong with each mistake that is known, alone and together; a mistake explains a bill where every printed figure comes out.`,
    ),
    ...paragraph(signOf(tolerance) === 0 ? 'No amount may be off by anything.' : off),
    ...listed(
      'What stood in the way:',
      problems.map((one) => `${foundWords(one, notation)}. ${findingSentences(one, notation).remedy}`),
    ),
  ]);
}

/**
 * The memo about the checked bills of an account: sections of lines that a page and a command both draw.
 *
 * @param notation  how numbers, money and days are written
 */
export function billsMemo(report: BillsReport, notation: ReportNotation): readonly SheetSection[] {
  const rule = report.rules?.version.interest ?? null;
  return [
    ...scopeSection(report, notation),
    ...report.findings.map((finding) => findingSection(finding, rule, notation)),
    ...totalSection(report, notation),
    ...undecidedSection(report, notation),
    ...stepsSection(report, notation),
    ...methodSection(report, notation),
  ];
}
