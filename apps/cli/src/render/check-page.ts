import {
  explanationParts,
  explanationRows,
  figureLabel,
  nearestCauses,
  nearestWords,
  surpriseWords,
  type Account,
  type Attempt,
  type BillExplanation,
  type CheckedBill,
  type Decider,
  type Effects,
  type ReportNotation,
  type TariffDocument,
} from '@unitbook/engine';
import { CAUTIONS } from './cautions.ts';
import { effectLines } from './check-effects.ts';
import { comparedRows, figureText, signedAmount } from './check-figures.ts';
import { verdictText } from './check-verdict.ts';
import { periodWords } from './day-words.ts';
import type { PageNotation } from './notation.ts';
import { renderTable, type Column } from './table.ts';
import { tariffHead } from './tariff-head.ts';
import { PAGE_WIDTH, wrap, wrapIndented } from './text.ts';

/** How a page about checked bills writes numbers, and days. */
export type CheckNotation = PageNotation & ReportNotation;

/** What a page about checked bills shows. */
export interface CheckPage {
  readonly account: Account;
  readonly tariff: TariffDocument;
  /** With its place in the file, from 1 on. */
  readonly bills: readonly { readonly place: number; readonly checked: CheckedBill }[];
  /** What mistakes did to later bills. */
  readonly effects: readonly Effects[];
}

const CONFIDENCE = {
  proven:
    'This is what the bill was made with: it makes every printed figure, and nothing else that is known does.',
  likely: 'It makes every printed figure, and so does what stands below it: one more fact decides.',
  possible: 'It makes every printed figure, but they are too few to prove it.',
} as const;

const variantLines = ({ attempt }: BillExplanation): readonly string[] =>
  attempt.steps.flatMap(({ cause, variant }) => wrap(`${cause.name}: ${variant.what}.`, PAGE_WIDTH));

/** What sums up to the difference; nothing where the bill does not print what is to be paid. */
function partRows(
  explanation: BillExplanation,
  checked: CheckedBill,
  notation: CheckNotation,
): readonly string[] {
  const rows = explanationRows(explanationParts(checked, explanation));
  if (rows.length === 0) return [];
  const columns: readonly Column[] = [
    { heading: ['Cause, in this order'], side: 'left' },
    { heading: ['Adds'], side: 'right' },
  ];
  const written = (isFoot: boolean): readonly (readonly string[])[] =>
    rows
      .filter(({ is }) => (is === 'together') === isFoot)
      .map(({ label, amount }) => [label, signedAmount(amount, notation)]);
  return renderTable(columns, { body: written(false), foot: written(true) });
}

function explanationLines(
  explanation: BillExplanation,
  checked: CheckedBill,
  notation: CheckNotation,
): readonly string[] {
  const { attempt, confidence } = explanation;
  return [
    ...partRows(explanation, checked, notation),
    ...variantLines(explanation),
    ...wrap(CONFIDENCE[confidence], PAGE_WIDTH),
    ...attempt.signs.flatMap(({ speaks, why }) =>
      wrap(`${speaks === 'for' ? 'For it' : 'Against it'}: ${why}`, PAGE_WIDTH),
    ),
    'To show:',
    ...attempt.steps.flatMap(({ cause }) =>
      cause.evidence.flatMap((one) => wrapIndented(`- ${one}`, '  ', PAGE_WIDTH)),
    ),
  ];
}

const named = ({ steps }: Attempt): string => steps.map(({ cause }) => cause.name).join(' and ');

function deciderLines(
  deciders: readonly Decider[],
  { explanations }: CheckedBill,
  tariff: TariffDocument,
  notation: CheckNotation,
): readonly string[] {
  if (deciders.length === 0) return [];
  const lines = deciders.slice(0, 5).flatMap(({ figure, values }) => {
    const each = values.map((value, at) => {
      const own = explanations[at];
      return `${value === null ? 'none' : figureText(figure, value, tariff, notation)} (${own === undefined ? '' : named(own.attempt)})`;
    });
    return wrapIndented(`${figureLabel(figure, tariff)}: ${each.join(', ')}`, '  ', PAGE_WIDTH);
  });
  return ['', 'WHAT WOULD DECIDE', ...lines];
}

/** What surprises on the right bill, and by which clause it is so. */
function surpriseLines({ surprises }: CheckedBill, notation: CheckNotation): readonly string[] {
  if (surprises.length === 0) return [];
  const lines = surprises.flatMap(({ said, clause }) =>
    wrapIndented(
      `- ${surpriseWords({ said }, notation)}${clause === null ? '' : ` [${clause}]`}`,
      '  ',
      PAGE_WIDTH,
    ),
  );
  return ['', 'WHAT MAY SURPRISE, AND IS RIGHT', ...lines];
}

function nearestLines(
  { nearest, verdict, explanations }: CheckedBill,
  tariff: TariffDocument,
): readonly string[] {
  if (verdict !== 'wrong' || explanations.length > 0) return [];
  const lines = nearestCauses(nearest, tariff).flatMap((one) =>
    wrapIndented(`- ${nearestWords(one)}`, '  ', PAGE_WIDTH),
  );
  return [
    '',
    'NOT EXPLAINED',
    ...wrap(
      'No mistake that is known makes these figures, alone or two together. Ask how the lines that differ were worked out.',
      PAGE_WIDTH,
    ),
    ...(lines.length === 0 ? [] : ['What comes nearest:', ...lines]),
  ];
}

function billLines(
  { place, checked }: CheckPage['bills'][number],
  tariff: TariffDocument,
  notation: CheckNotation,
): readonly string[] {
  const { printed, explanations, deciders, compared } = checked;
  const why = explanations.flatMap((one, at) => [
    '',
    at === 0 ? 'WHY' : 'OR',
    ...explanationLines(one, checked, notation),
  ]);
  return [
    '',
    `BILL ${String(place)}   ${periodWords(printed.period)}`,
    ...wrap(verdictText(checked, notation), PAGE_WIDTH),
    ...(compared.length === 0 ? [] : ['', ...comparedRows(compared, tariff, notation)]),
    ...why,
    ...deciderLines(deciders, checked, tariff, notation),
    ...nearestLines(checked, tariff),
    ...surpriseLines(checked, notation),
  ];
}

/** Printed bills beside the right ones: the verdict of each first, then its lines, then why. */
export function checkPage(
  { account, tariff, bills, effects }: CheckPage,
  notation: CheckNotation,
): readonly string[] {
  const { id, name } = account.document;
  return [
    ...tariffHead(tariff, 'Printed bills beside the right ones', [
      ['Account', name === undefined ? id : `${id}, ${name}`],
    ]),
    ...bills.flatMap((bill) => billLines(bill, tariff, notation)),
    ...effectLines(effects, notation),
    '',
    CAUTIONS,
  ];
}
