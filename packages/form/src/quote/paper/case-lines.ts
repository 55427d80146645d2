import type { CaseResult, Quote } from '@unitbook/engine';
import { returnText } from '../words/payback-text.ts';
import { paybackOn, type PaperView } from './paper-view.ts';

/** How much is changed in a case: the engine has it in the name it gives. */
const percentOf = (name: string): string => /\d+(?:\.\d+)?/.exec(name)?.[0] ?? '0';

/**
 * A case by its name in the words of the paper. What is named by somebody, such as other rules, keeps its name,
 * and so does a case that the words do not know.
 */
export function caseName({ id, name }: Pick<CaseResult, 'id' | 'name'>, paper: PaperView): string {
  const { words, writing, quote } = paper;
  const { names, already } = words.cases;
  const known = names[id];
  if (known !== undefined) return known(writing.number(percentOf(name)));
  const early = /^policy-(\d+)-now$/.exec(id)?.[1];
  if (early === undefined) return name;
  const policy = quote.input.document.policies?.[Number.parseInt(early, 10) - 1];
  return policy === undefined ? name : already(policy.name);
}

function caseLine(name: string, { years, measures, grid }: Quote, paper: PaperView): readonly string[] {
  const { words } = paper;
  // Under another rule money can be in other parts of a coin.
  const writing = paper.writing.atGrid(grid);
  return [
    name,
    writing.column(years[0]?.saving ?? 0),
    paybackOn(measures.simple, paper),
    paybackOn(measures.discounted, paper),
    writing.column(measures.lifeNet),
    writing.column(measures.netPresentValue),
    returnText(measures.rates, words.cases, writing.percent),
  ];
}

/** What comes of each case, line by line, the quote itself first. */
export function caseLines(paper: PaperView): readonly (readonly string[])[] {
  const { quote, cases, words } = paper;
  return [
    caseLine(words.tables.asQuoted, quote, paper),
    ...cases.map((one) => {
      const name = caseName(one, paper);
      return one.quote === null
        ? [name, words.cases.notBilled, '', '', '', '', '']
        : caseLine(name, one.quote, paper);
    }),
  ];
}
