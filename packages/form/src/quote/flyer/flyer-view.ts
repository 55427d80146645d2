import {
  checkFlyer,
  parseDay,
  quoteFacts,
  type Finding,
  type FlyerDocument,
  type FlyerFacts,
  type FlyerLine,
  type Quote,
} from '@unitbook/engine';
import { writingFor, type Writing } from '../../writing/writing.ts';
import { offeredQuote, type OfferedInput } from '../promise/offered-quote.ts';
import { FLYER_FIELDS, WORDS_LABEL, type FlyerKey } from './flyer-fields.ts';
import { readTypedFlyer, type TypedFlyer } from './read-typed-flyer.ts';

/** What a flyer is held against. */
export interface FlyerGround {
  readonly quote: Quote;
  readonly facts: FlyerFacts;
}

/** The quote as it is offered, worked out; null: it has no answer yet. */
export function flyerGround(input: OfferedInput): FlyerGround | null {
  const offered = offeredQuote(input);
  return offered === null ? null : { quote: offered.quote, facts: quoteFacts(offered.prepared) };
}

/** A line of a flyer beside the same of the quote. */
export interface FlyerLineView {
  readonly key: FlyerKey;
  readonly label: string;
  /** As the page writes them; '' where there is nothing to say. */
  readonly claimed: string;
  readonly ours: string;
  readonly moreBy: string;
  /** The same for a sheet, as exact decimals. */
  readonly exact: readonly [claimed: string, ours: string, moreBy: string];
  /** What to ask about it. */
  readonly asks: readonly Finding[];
}

/** Everything that the page shows of a flyer. */
export interface FlyerView extends TypedFlyer {
  readonly writing: Writing;
  readonly hasQuote: boolean;
  /** The day of the quote in words; '' where it is not known. */
  readonly quoteDay: string;
  /** Whether anything at all was typed. */
  readonly isBlank: boolean;
  /** What can be checked, in the order of the form; none without a quote. */
  readonly lines: readonly FlyerLineView[];
}

/** A number of a claim as the page writes it. */
function written(text: string, unit: FlyerLine['unit'], { money, number }: Writing): string {
  switch (unit) {
    case 'money':
    case 'money-a-unit':
      return money(text);
    case 'years':
      return `${number(text)} years`;
    case 'percent':
      return `${number(text)} %`;
    case 'kWp':
    case 'kWh':
      return number(text);
  }
}

function moreBy({ difference, unit }: FlyerLine, writing: Writing): string {
  if (difference === null) return '–';
  if (/^-?0(\.0+)?$/.test(difference)) return 'the same';
  return `${difference.startsWith('-') ? '' : '+'}${written(difference, unit, writing)}`;
}

function lineView(
  line: FlyerLine,
  label: string,
  { asks, writing }: { readonly asks: readonly Finding[]; readonly writing: Writing },
): FlyerLineView {
  const { claim, unit, claimed, ours, difference } = line;
  return {
    key: claim,
    label,
    claimed: written(claimed, unit, writing),
    ours: ours === null ? 'not within the life' : written(ours, unit, writing),
    moreBy: moreBy(line, writing),
    exact: [claimed, ours ?? '', difference ?? ''],
    asks,
  };
}

/** The lines of a flyer that can be checked, each beside the quote, with what to ask about it. */
function linesOf(flyer: FlyerDocument, ground: FlyerGround, writing: Writing): readonly FlyerLineView[] {
  const { lines, findings } = checkFlyer(flyer, ground.quote, ground.facts);
  const asksOf = (key: FlyerKey): readonly Finding[] => findings.filter(({ path }) => path[0] === key);
  const numbers = FLYER_FIELDS.flatMap(({ claim, label }) =>
    lines
      .filter((line) => line.claim === claim)
      .map((line) => lineView(line, label, { asks: asksOf(claim), writing })),
  );
  const { words } = flyer;
  if (words === undefined) return numbers;
  const said: FlyerLineView = {
    key: 'words',
    label: WORDS_LABEL,
    claimed: words,
    ours: '',
    moreBy: '',
    exact: [words, '', ''],
    asks: asksOf('words'),
  };
  return [...numbers, said];
}

/** What a view is made of. */
export interface FlyerViewInput {
  readonly flyer: FlyerDocument;
  readonly ground: FlyerGround | null;
  readonly locale: string;
  /** The claim that is being typed in; '' for none. */
  readonly typing: string;
}

/** What is typed in a line right now is not wrong yet: the rest of it is still to come. */
function whileTyping(finding: Finding, typing: string): Finding {
  return finding.path[0] === typing
    ? { ...finding, code: 'account/number-missing', remedy: 'the rest of it.' }
    : finding;
}

/** Work out everything that the page shows of a flyer. */
export function viewFlyer({ flyer, ground, locale, typing }: FlyerViewInput): FlyerView {
  const typed = readTypedFlyer(flyer);
  const plain = writingFor(locale, ground?.quote.currency ?? 'INR');
  // What is printed keeps the decimals it has.
  const writing = { ...plain, number: plain.printed };
  const day = parseDay(ground?.quote.input.document.offer.date ?? '');
  return {
    ...typed,
    findings: typed.findings.map((finding) => whileTyping(finding, typing)),
    writing,
    hasQuote: ground !== null,
    quoteDay: day === null ? '' : writing.day(day),
    isBlank: Object.keys(typed.plain).every((key) => key === 'format' || key === '$schema'),
    lines: ground === null ? [] : linesOf(typed.usable, ground, writing),
  };
}
