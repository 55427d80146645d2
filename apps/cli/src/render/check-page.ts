import {
  figureLabel,
  type Account,
  type Attempt,
  type BillExplanation,
  type CheckedBill,
  type Decider,
  type Effects,
  type TariffDocument,
} from '@unitbook/engine';
import { CAUTIONS } from './cautions.ts';
import { effectLines } from './check-effects.ts';
import { comparedRows, figureText, signedAmount } from './check-figures.ts';
import { periodWords } from './day-words.ts';
import type { PageNotation } from './notation.ts';
import { moneyFigure } from './sum-figures.ts';
import { renderTable, type Column } from './table.ts';
import { tariffHead } from './tariff-head.ts';
import { PAGE_WIDTH, wrap, wrapIndented } from './text.ts';

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

/** The answer in a sentence or two. */
function verdictText(
  { verdict, difference, right, alternatives }: CheckedBill,
  notation: PageNotation,
): string {
  const money = (value: Parameters<typeof moneyFigure>[0]): string => notation.amount(moneyFigure(value));
  const payable = right?.figures.get('payable');
  const should = payable === undefined ? '' : ` It should be ${money(payable)}.`;
  switch (verdict) {
    case 'right':
      return 'Right: every printed figure is as computed.';
    case 'right-but-surprising':
      return 'Right, though it surprises: every printed figure is as computed.';
    case 'follows':
      return `Follows from a bill before: what that one handed on makes every figure of this one.${should}`;
    case 'wrong': {
      if (difference === null || difference.numerator === 0)
        return `Wrong, though the amount is right.${should}`;
      const amount = money({
        ...difference,
        numerator: difference.numerator < 0 ? -difference.numerator : difference.numerator,
      });
      return difference.numerator > 0
        ? `Wrong: ${amount} too much.${should}`
        : `Wrong: ${amount} too little, in the account's favour; it may be asked for later.${should}`;
    }
    case 'cannot-tell': {
      if (alternatives.length > 1) {
        const cases = alternatives.map(
          ({ opening, payable: own }) =>
            `${money(own)} if ${opening === 0 ? 'nothing' : notation.units({ numerator: opening, denominator: 1000 })} was brought forward`,
        );
        return `Cannot be told: ${cases.join(', ')}. Look at the closing credit of the bill before.`;
      }
      return `Cannot be told yet.${should} Add what the bill prints, and the line that differs is shown.`;
    }
  }
}

function partRows({ attempt, attribution }: BillExplanation, notation: PageNotation): readonly string[] {
  if (attribution === null)
    return attempt.steps.flatMap(({ cause, variant }) => wrap(`${cause.name}: ${variant.what}.`, PAGE_WIDTH));
  const columns: readonly Column[] = [
    { heading: ['Cause, in this order'], side: 'left' },
    { heading: ['Adds'], side: 'right' },
  ];
  const body = attribution.parts.map(({ cause, amount }) => [cause.name, signedAmount(amount, notation)]);
  const rounding =
    attribution.rounding.numerator === 0
      ? []
      : [['Rounding of the total', signedAmount(attribution.rounding, notation)]];
  const rest =
    attribution.rest.numerator === 0 ? [] : [['Not explained', signedAmount(attribution.rest, notation)]];
  const foot = [['Together', signedAmount(attribution.difference, notation)]];
  return renderTable(columns, { body: [...body, ...rounding, ...rest], foot });
}

function explanationLines(explanation: BillExplanation, notation: PageNotation): readonly string[] {
  const { attempt, confidence } = explanation;
  return [
    ...partRows(explanation, notation),
    ...attempt.steps.flatMap(({ cause, variant }) => wrap(`${cause.name}: ${variant.what}.`, PAGE_WIDTH)),
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
  notation: PageNotation,
): readonly string[] {
  if (deciders.length === 0) return [];
  const lines = deciders.slice(0, 5).flatMap(({ figure, values }) => {
    const each = values.map((value, at) => {
      const own = explanations[at];
      return `${value === null ? 'none' : figureText(figure, value, notation)} (${own === undefined ? '' : named(own.attempt)})`;
    });
    return wrapIndented(`${figureLabel(figure, tariff)}: ${each.join(', ')}`, '  ', PAGE_WIDTH);
  });
  return ['', 'WHAT WOULD DECIDE', ...lines];
}

/** What surprises on the right bill, and by which clause it is so. */
function surpriseLines({ surprises }: CheckedBill): readonly string[] {
  if (surprises.length === 0) return [];
  const lines = surprises.flatMap(({ what, clause }) =>
    wrapIndented(`- ${what}${clause === null ? '' : ` [${clause}]`}`, '  ', PAGE_WIDTH),
  );
  return ['', 'WHAT MAY SURPRISE, AND IS RIGHT', ...lines];
}

function nearestLines(
  { nearest, verdict, explanations }: CheckedBill,
  tariff: TariffDocument,
): readonly string[] {
  if (verdict !== 'wrong' || explanations.length > 0) return [];
  const lines = nearest.flatMap((attempt) =>
    wrapIndented(
      `- ${named(attempt)}: ${String(attempt.reproduced)} printed figures, but not ${attempt.missed.map((name) => figureLabel(name, tariff)).join(', ')}`,
      '  ',
      PAGE_WIDTH,
    ),
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
  notation: PageNotation,
): readonly string[] {
  const { printed, explanations, deciders, compared } = checked;
  const why = explanations.flatMap((one, at) => [
    '',
    at === 0 ? 'WHY' : 'OR',
    ...explanationLines(one, notation),
  ]);
  return [
    '',
    `BILL ${String(place)}   ${periodWords(printed.period)}`,
    ...wrap(verdictText(checked, notation), PAGE_WIDTH),
    ...(compared.length === 0 ? [] : ['', ...comparedRows(compared, tariff, notation)]),
    ...why,
    ...deciderLines(deciders, checked, tariff, notation),
    ...nearestLines(checked, tariff),
    ...surpriseLines(checked),
  ];
}

/** Printed bills beside the right ones: the verdict of each first, then its lines, then why. */
export function checkPage(
  { account, tariff, bills, effects }: CheckPage,
  notation: PageNotation,
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
