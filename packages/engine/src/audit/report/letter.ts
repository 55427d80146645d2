import { figureValue, signOf } from '../../quantity/index.ts';
import type { BillFinding, FindingExplanation } from './bill-finding.ts';
import type { BillsReport } from './bills-report.ts';
import {
  billWords,
  capital,
  dayWords,
  heldWords,
  insideSentence,
  moneyWords,
  sizeWords,
  type ReportNotation,
} from './report-words.ts';
import { inRow } from '../in-row.ts';
import type { ClauseReference } from './source-of-clause.ts';
import { limitWords, LOCAL_RULES_CAUTION } from './step-words.ts';

/** A letter from the account holder to the billing office, ready to be drawn: every text is a paragraph or an item. */
export interface BillLetter {
  /** Lines of the address. */
  readonly to: readonly string[];
  readonly date: string;
  readonly subject: string;
  readonly greeting: string;
  readonly paragraphs: readonly string[];
  /** What is asked for. */
  readonly asks: readonly string[];
  readonly encloses: readonly string[];
  readonly closing: readonly string[];
  /** Not part of the letter: what would bear it out and is not at hand. */
  readonly toGather: readonly string[];
  /** Not part of the letter: to be shown beside it. */
  readonly caution: string;
}

/** What a letter is written with besides the report. */
export interface LetterTerms {
  /** Name of the account holder; left out: a line to sign on. */
  readonly holder?: string;
}

/** What the printed figures come from, as far as it is known. */
function causeWords({ confidence, causes }: FindingExplanation): string {
  const what = inRow(causes.map((cause) => insideSentence(cause.what)));
  switch (confidence) {
    case 'proven':
      return `The printed figures come out, every one, if this is done: ${what}.`;
    case 'likely':
      return `The printed figures come out if this is done: ${what}. Another explanation does as well.`;
    case 'possible':
      return `They may come from this: ${what}.`;
  }
}

function whyWords({ explanations, isConsequence }: BillFinding): string {
  const [surest] = explanations;
  if (isConsequence) return 'It goes on from the bill before it, which is not right either.';
  return surest === undefined ? 'I could not find out what it comes from.' : causeWords(surest);
}

/** "NMR-2021 r. 7.2 (Net Metering Regulations 2021)" */
const shortClause = ({ clause, source }: ClauseReference): string =>
  source === null ? clause : `${clause} (${source.title})`;

const hasOwnReadings = ({ held }: BillFinding['evidence']): boolean =>
  held.some(({ kind }) => kind === 'own-readings');

/** What a bill asks for and what it should ask for. */
function claimWords({ bill, claim, difference, evidence }: BillFinding, notation: ReportNotation): string {
  const name = capital(billWords(bill, notation));
  const right = claim.computed === null ? 'nothing' : figureValue(claim.computed, notation);
  const shows = `${name} shows ${figureValue(claim.printed, notation)} (${insideSentence(claim.label)}). By ${hasOwnReadings(evidence) ? 'my readings' : 'its readings'} and the tariff it should be ${right}`;
  if (difference === null || signOf(difference) === 0) return `${shows}.`;
  return `${shows}: ${sizeWords(difference, notation)} ${signOf(difference) > 0 ? 'less' : 'more'}.`;
}

function findingParagraph(finding: BillFinding, notation: ReportNotation): string {
  const { clauses } = finding;
  const rules = clauses.map(shortClause).join('; ');
  const by = rules === '' ? '' : ` The ${clauses.length === 1 ? 'rule' : 'rules'} concerned: ${rules}.`;
  return `${claimWords(finding, notation)} ${whyWords(finding)}${by}`;
}

function interestWords(
  { refund }: BillFinding,
  { rules, on }: BillsReport,
  notation: ReportNotation,
): string {
  const interest = refund?.interest ?? null;
  const rule = rules?.version.interest;
  if (interest === null || rule?.kind !== 'simple' || signOf(interest) <= 0) return '';
  return `, with interest of ${figureValue(interest, notation)} up to ${dayWords(on, notation)} (${rule.clause})`;
}

/** How soon a meter is tested, where the rules have a step of that name. */
function testWords({ rules }: BillsReport, notation: ReportNotation): string {
  const step = rules?.version.steps.find(({ id }) => id === 'meter-test');
  const [limit] = step?.limits ?? [];
  return limit === undefined ? '' : `, ${limitWords(limit, notation)} (${limit.clause})`;
}

/** What is asked for about one bill. */
function askedFor(finding: BillFinding, report: BillsReport, notation: ReportNotation): readonly string[] {
  return finding.recommendations
    .map(({ id }) => askWords(id, finding, report, notation))
    .filter((text) => text !== '');
}

type Ask = BillFinding['recommendations'][number]['id'];

/** How a recommendation is asked for; empty where there is nothing to ask. */
function askWords(id: Ask, finding: BillFinding, report: BillsReport, notation: ReportNotation): string {
  const { bill, refund, handedOn, deciders } = finding;
  const amount = (key: 'refund' | 'withdraw' | 'credit' | 'underBilled'): string =>
    refund === null ? '' : moneyWords(refund[key], notation);
  switch (id) {
    case 'revise-bill':
      return `Please revise the ${billWords(bill, notation)}, and send me the working line by line.`;
    case 'pay-back':
      return `Please pay back ${amount('refund')}${interestWords(finding, report, notation)}.`;
    case 'withdraw':
      return `Please withdraw ${amount('withdraw')} of it, and neither recover that amount nor charge a fee on it meanwhile.`;
    case 'pay-credit':
      return `Please pay or credit ${amount('credit')}.`;
    case 'keep-aside':
      return refund === null
        ? 'Please tell me how what was billed too little will be billed.'
        : `Please tell me how the ${amount('underBilled')} that was billed too little will be billed.`;
    case 'correct-credit': {
      const right = handedOn.map(
        ({ label, right: own }) => `${figureValue(own, notation)} (${insideSentence(label)})`,
      );
      return right.length === 0 ? '' : `Please carry into the next bill ${inRow(right)}.`;
    }
    case 'correct-readings':
      return hasOwnReadings(finding.evidence)
        ? 'Please correct the readings on record to those I enclose.'
        : 'Please look up the readings on record, of each register.';
    case 'test-meter':
      return `Please read or test the meter while I am there${testWords(report, notation)}.`;
    case 'correct-rules':
      return 'Please see that the next bill is made by the rules named above.';
    case 'clear-account':
      return 'Please correct payments, arrears and fees on the account.';
    case 'show-working':
      return '';
    case 'decide':
      return `Please tell me what the bill was made with: ${inRow(deciders.slice(0, 3).map(({ label }) => insideSentence(label)))}.`;
  }
}

/** What is held, each once, and the memo. */
function enclosures({ findings }: BillsReport, notation: ReportNotation): readonly string[] {
  const held = findings.flatMap(({ evidence }) => evidence.held.map((one) => heldWords(one, notation)));
  return [...new Set(held), 'The calculation, line by line'];
}

function replyWords({ rules }: BillsReport): string {
  const [step] = rules?.version.steps ?? [];
  const number = 'Please acknowledge this letter with its number and date';
  return step === undefined ? `${number}.` : `${number} (${step.clause}).`;
}

const NO_FINDING = 'I checked my bills, and found nothing to be set right.';

/**
 * A letter in plain words from the account holder to the billing office: what is wrong in whosever favour, by which
 * rules, what is asked for and what is enclosed. It threatens nothing and gives no legal advice.
 *
 * @param notation  how numbers, money and days are written
 */
export function billsLetter(
  report: BillsReport,
  notation: ReportNotation,
  { holder }: LetterTerms = {},
): BillLetter {
  const { findings, rules, supplier, account, on } = report;
  const [step] = rules?.version.steps ?? [];
  const isWrong = findings.length > 0;
  const opening = `I have checked ${findings.length === 1 ? 'this bill' : 'these bills'} of my account ${account}, and ask you to look at ${findings.length === 1 ? 'it' : 'them'} with me.`;
  return {
    to: [step?.body ?? `${supplier}, billing office`],
    date: dayWords(on, notation),
    subject: `Account ${account}: ${isWrong ? inRow(findings.map(({ bill }) => billWords(bill, notation))) : 'bills'}`,
    greeting: 'Dear Sir or Madam,',
    paragraphs: isWrong ? [opening, ...findings.map((one) => findingParagraph(one, notation))] : [NO_FINDING],
    asks: isWrong ? [...findings.flatMap((one) => askedFor(one, report, notation)), replyWords(report)] : [],
    encloses: isWrong ? enclosures(report, notation) : [],
    closing: ['Thank you for your help.', 'Yours faithfully,', holder ?? '______________________'],
    toGather: [...new Set(findings.flatMap(({ evidence }) => evidence.wanted))],
    caution: LOCAL_RULES_CAUTION,
  };
}
