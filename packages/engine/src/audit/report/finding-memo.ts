import { explainFigure, figureValue, type Explanation, type Quotient, signOf } from '../../quantity/index.ts';
import type { BillFinding, FindingConfidence, FindingExplanation, FindingLine } from './bill-finding.ts';
import type { InterestRule } from './dispute-schema.ts';
import { explanationRows } from './explanation-rows.ts';
import { foundWords, withDays } from './finding-sentences.ts';
import { nearestWords } from './nearest.ts';
import { interestRuleWords, refundRows, stretchWords, timeLimitWords } from './refund-words.ts';
import {
  billWords,
  clauseWords,
  dayWords,
  heldWords,
  insideSentence,
  moneyWords,
  periodWords,
  sizeWords,
  valueWords,
  type ReportNotation,
} from './report-words.ts';
import { listed, paragraph, tabled, type SheetPart, type SheetSection } from './sheet.ts';

const CONFIDENCE: Readonly<Record<FindingConfidence, string>> = {
  proven: 'Proven: it makes every printed figure, and no other mistake that is known does.',
  likely: 'Likely: it makes every printed figure, and so does another explanation.',
  possible: 'Possible: it makes every printed figure, but they are too few, or something speaks against it.',
};

/** What a finding comes to, in a sentence. */
export function verdictWords({ claim, difference, favour }: BillFinding, notation: ReportNotation): string {
  const printed = figureValue(claim.printed, notation);
  const right = claim.computed === null ? 'nothing of the kind' : figureValue(claim.computed, notation);
  const both = `${claim.label}: ${printed} printed, ${right} right`;
  if (difference === null || signOf(difference) === 0)
    return `${both}. ${favour === 'none' ? 'What is to be paid does not change.' : `It is in favour of the ${favour}.`}`;
  const size = sizeWords(difference, notation);
  return signOf(difference) > 0 ? `${both}: ${size} too much.` : `${both}: ${size} too little.`;
}

const differenceWords = ({ difference, printed }: FindingLine, notation: ReportNotation): string =>
  difference === null ? '' : valueWords(difference, printed.unit, notation);

function lineRows(lines: readonly FindingLine[], notation: ReportNotation): readonly SheetPart[] {
  const rows = lines.map((line) => [
    line.label,
    figureValue(line.printed, notation),
    line.computed === null ? 'none' : figureValue(line.computed, notation),
    differenceWords(line, notation),
    line.clauses.map(({ clause }) => clause).join(', '),
  ]);
  return tabled(['Figure', 'Printed', 'Right', 'Printed less right', 'Clause'], rows, [1, 2, 3]);
}

/** A step of a working: "Energy charge: Rs 72.00 = 24 units × Rs 3.00 per unit (TO-2024 cl. 4.2)". */
function workingLine(
  { label, value, formula, rounding, clause }: Explanation,
  notation: ReportNotation,
): string {
  const how = formula === '' ? '' : ` = ${formula}`;
  const rounded = rounding === '' ? '' : `; ${rounding}`;
  // What stands in for a clause can name a day: "passbook, closing of the period to 1 May 2025".
  const by = clause === '' ? '' : ` (${withDays(clause, notation)})`;
  return `${label}: ${value}${how}${rounded}${by}`;
}

/** The working of the figures that differ, each with the steps right below it. */
function workings(lines: readonly FindingLine[], notation: ReportNotation): readonly string[] {
  const all = lines.flatMap(({ computed }) => {
    if (computed === null) return [];
    const { inputs, ...own } = explainFigure(computed, notation);
    return [{ ...own, inputs }, ...inputs].map((step) => workingLine(step, notation));
  });
  return [...new Set(all)];
}

function causeRows(explanation: FindingExplanation, notation: ReportNotation): readonly SheetPart[] {
  const { causes } = explanation;
  const what = new Map(causes.map((cause) => [cause.name, cause.what]));
  const summed = explanationRows(explanation).map(({ is, label, amount }) => [
    label,
    is === 'cause' ? (what.get(label) ?? '') : '',
    moneyWords(amount, notation),
  ]);
  // Without what is to be paid there is nothing to sum up.
  const rows = summed.length > 0 ? summed : causes.map((cause) => [cause.name, cause.what, '']);
  return tabled(['Cause', 'What was done', 'Adds'], rows, [2]);
}

function explanationParts(explanation: FindingExplanation, notation: ReportNotation): readonly SheetPart[] {
  const signs = explanation.causes.flatMap(({ signs: own }) =>
    own.map(({ speaks, why }) => `${speaks === 'for' ? 'For it' : 'Against it'}: ${why}`),
  );
  return [
    ...causeRows(explanation, notation),
    ...paragraph(CONFIDENCE[explanation.confidence]),
    ...listed('What else is known:', signs),
  ];
}

function unexplainedParts({ explanations, isConsequence, nearest }: BillFinding): readonly SheetPart[] {
  if (isConsequence)
    return paragraph('It is right by what the bill before handed on, and wrong because that one is.');
  if (explanations.length > 0) return [];
  return [
    ...paragraph('No mistake that is known makes the printed figures.'),
    ...listed('What comes nearest, and the figures it misses:', nearest.map(nearestWords)),
  ];
}

/** Any one decides: more of them would only be in the way. */
const MOST_DECIDERS = 5;

function deciderItems({ deciders }: BillFinding, notation: ReportNotation): readonly string[] {
  return deciders.slice(0, MOST_DECIDERS).map(({ label, values }) => {
    const each = values.map((value) => (value === null ? 'none' : figureValue(value, notation)));
    return `${label}: ${each.join(' or ')}`;
  });
}

function causeParts(finding: BillFinding, notation: ReportNotation): readonly SheetPart[] {
  const { explanations, ruledOut, clauses } = finding;
  return [
    ...explanations.flatMap((one) => explanationParts(one, notation)),
    ...unexplainedParts(finding),
    ...listed(
      'Any of these would decide, in the order of the explanations:',
      deciderItems(finding, notation),
    ),
    ...paragraph(
      ruledOut.length === 0
        ? ''
        : `Other mistakes that are known, none of which was found to make these figures: ${ruledOut.join(', ')}.`,
    ),
    ...listed(
      'Rules:',
      clauses.map((one) => clauseWords(one, notation)),
    ),
  ];
}

function moneyParts(
  finding: BillFinding,
  rule: InterestRule | null,
  notation: ReportNotation,
): readonly SheetPart[] {
  const { refund, limit } = finding;
  const rows = refund === null ? [] : refundRows(refund, notation);
  const isPaidBack = refund !== null && signOf(refund.refund) > 0;
  return [
    ...tabled(['To be set right', 'Amount'], rows, [1]),
    ...paragraph(isPaidBack ? interestRuleWords(rule, notation) : ''),
    ...listed(
      'Interest before it is rounded:',
      (refund?.parts ?? []).flatMap((part) => stretchWords(part, notation)),
    ),
    ...paragraph(limit === null ? '' : timeLimitWords(limit, notation)),
  ];
}

function laterParts({ handedOn, effects }: BillFinding, notation: ReportNotation): readonly SheetPart[] {
  const rows = handedOn.map(({ label, printed, right }) => [
    label,
    printed === null ? 'not printed' : figureValue(printed, notation),
    figureValue(right, notation),
  ]);
  const bills = (effects?.bills ?? []).map(({ number, period, difference }) =>
    `Bill ${number ?? ''} ${periodWords(period, notation)}: ${moneyWords(difference, notation)}`.replace(
      '  ',
      ' ',
    ),
  );
  const account = (label: string, value: Quotient | undefined): readonly string[] =>
    value === undefined || signOf(value) === 0 ? [] : [`${label}: ${moneyWords(value, notation)}`];
  return [
    ...tabled(['Handed on to the next bill', 'Printed', 'Right'], rows, [1, 2]),
    ...listed('Later bills, printed less right:', [
      ...bills,
      ...account('This bill and those after it, in all', effects?.money),
      ...(effects?.bank ?? [])
        .filter(({ units }) => signOf(units) !== 0)
        .map(({ ledger, units }) => {
          const own = handedOn.find((one) => one.ledger === ledger);
          const off = valueWords(units, own?.right.unit ?? 'kWh', notation);
          return `Held at the end, ${insideSentence(own?.label ?? ledger)}: ${off} off`;
        }),
      ...account('Arrears that follow from it', effects?.arrears),
      ...account('Late fee that follows from it', effects?.lateFee),
    ]),
  ];
}

/** What became of a finding. */
function replyWords({ reply }: BillFinding, notation: ReportNotation): string {
  if (reply === null) return 'Open: no reply yet.';
  const on = reply.on === null ? '' : ` on ${dayWords(reply.on, notation)}`;
  return `Status: ${reply.status}${on}${reply.words === '' ? '.' : `: ${reply.words}`}`;
}

/**
 * A finding as a section of a memo: the answer first, then figures, working, causes, rules, evidence, money, later
 * bills and what should be done.
 *
 * @param rule      that of the refund
 * @param notation  how numbers, money and days are written
 */
export function findingSection(
  finding: BillFinding,
  rule: InterestRule | null,
  notation: ReportNotation,
): SheetSection {
  const { id, bill, lines, evidence, recommendations, meter } = finding;
  const days = valueWords({ numerator: bill.days, denominator: 1 }, 'day', notation);
  const where = `Account ${finding.account}${meter === null ? '' : `, meter ${meter}`}, ${days}. ${replyWords(finding, notation)}`;
  const parts: readonly SheetPart[] = [
    ...paragraph(verdictWords(finding, notation)),
    ...paragraph(where),
    ...lineRows(lines, notation),
    ...listed(
      'What the bill says that cannot all be true:',
      finding.inconsistencies.map((one) => foundWords(one, notation)),
    ),
    ...listed('How the right figures are worked out:', workings(lines, notation)),
    ...causeParts(finding, notation),
    ...listed(
      'Held:',
      evidence.held.map((one) => heldWords(one, notation)),
    ),
    ...listed('Wanted:', evidence.wanted),
    ...moneyParts(finding, rule, notation),
    ...laterParts(finding, notation),
    ...listed(
      'What should be done:',
      recommendations.map(({ text }) => text),
    ),
  ];
  return { id, title: `${id}: ${billWords(bill, notation)}`, parts };
}
