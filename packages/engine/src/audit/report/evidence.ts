import { givenFigure, type Quotient } from '../../quantity/index.ts';
import { figureLabel } from '../figure-label.ts';
import { FIGURE, groupOf } from '../figure-names.ts';
import type { PrintedBill } from '../printed.ts';
import type { FindingEvidence, FindingExplanation, HeldEvidence } from './bill-finding.ts';
import type { CheckedParts, FindingTerms } from './checked-parts.ts';
import { billReference } from './finding-lines.ts';
import { figureUnit } from './figure-unit.ts';

const money = ({ numerator, denominator }: Quotient) =>
  givenFigure({ id: 'paid', label: 'Paid', unit: 'money', numerator, denominator, clause: 'bill' });

function paymentOf(printed: PrintedBill, of: 'bill' | 'bill-before'): readonly HeldEvidence[] {
  const { paid } = printed;
  return paid === null ? [] : [{ kind: 'payment', of, on: paid.on, amount: money(paid.amount) }];
}

/** The bill before, with the credit and the readings that it prints as handed on. */
function billBefore(before: PrintedBill, { facts }: Pick<CheckedParts, 'facts'>): HeldEvidence {
  const { tariff } = facts;
  const printed = (isMeant: (name: string) => boolean) =>
    [...before.figures]
      .filter(([name]) => isMeant(name))
      .map(([name, { numerator, denominator }]) => {
        const words = { id: name, label: figureLabel(name, tariff), unit: figureUnit(name, tariff) };
        return givenFigure({ ...words, numerator, denominator, clause: 'bill before' });
      });
  const closing = printed((name) => name.startsWith(FIGURE.closing('')));
  const readings = printed((name) => groupOf(name) === 'reading' && name.endsWith('.present'));
  return { kind: 'bill-before', bill: billReference(before), closing, readings };
}

const isOwn = ({ sources }: Pick<CheckedParts, 'sources'>): boolean => {
  const all = Object.values(sources);
  return all.length > 0 && all.every((source) => source === 'own');
};

function heldEvidence(
  checked: CheckedParts,
  { before, held }: Pick<FindingTerms, 'before' | 'held'>,
): readonly HeldEvidence[] {
  const { printed, facts } = checked;
  const { from, to } = facts.period;
  return [
    { kind: 'bill', bill: billReference(printed) },
    ...(isOwn(checked) ? [{ kind: 'own-readings', days: [from, to] } as const] : []),
    ...(before === null ? [] : [billBefore(before, checked), ...paymentOf(before, 'bill-before')]),
    ...paymentOf(printed, 'bill'),
    ...held.map((what): HeldEvidence => ({ kind: 'stated', what })),
  ];
}

/** Which words of a cause ask for something that may be held, and what has to be held for it. */
const ANSWERED_BY: readonly (readonly [RegExp, (one: HeldEvidence) => boolean])[] = [
  [/\breceipts?\b/i, (one) => one.kind === 'payment' && one.of === 'bill-before'],
  [/\bclosing (?:\w+ )?readings?\b/i, (one) => one.kind === 'bill-before' && one.readings.length > 0],
  [/\bclosing credit\b/i, (one) => one.kind === 'bill-before' && one.closing.length > 0],
  [/\b(?:the bill before|the previous bill|both bills)\b/i, (one) => one.kind === 'bill-before'],
  [/\bown readings?\b/i, (one) => one.kind === 'own-readings'],
  [/\b(?:on|of) the bill$/i, (one) => one.kind === 'bill'],
];

/** Whether what a cause asks for is held: by its own words, or by what the first words that match ask for. */
function isHeld(wanted: string, held: readonly HeldEvidence[]): boolean {
  if (held.some((one) => one.kind === 'stated' && one.what === wanted)) return true;
  const [, answers] = ANSWERED_BY.find(([words]) => words.test(wanted)) ?? [];
  return answers !== undefined && held.some(answers);
}

/**
 * What is held to show that a finding is right, and what is still wanted: what the causes ask for, own readings where
 * those of the bill were taken, and the payment where none was typed.
 */
export function evidenceOf(
  checked: CheckedParts,
  terms: Pick<FindingTerms, 'before' | 'held'>,
  explanations: readonly FindingExplanation[],
): FindingEvidence {
  const held = heldEvidence(checked, terms);
  const asked = explanations.flatMap(({ causes }) => causes.flatMap(({ evidence }) => evidence));
  const own = [
    ...(isOwn(checked) ? [] : ['own readings on both days, with photos of the display']),
    ...(terms.before === null ? ['the bill before, with its closing credit'] : []),
    ...(checked.printed.paid === null ? ['the receipt, if the bill was paid'] : []),
  ];
  const wanted = [...new Set([...asked.filter((one) => !isHeld(one, held)), ...own])];
  return { held, wanted };
}
