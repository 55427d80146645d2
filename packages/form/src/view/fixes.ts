import type { Finding, RegisterId } from '@unitbook/engine';
import { answer, changeAccount, changeRow, sortRows, type RowChange } from '../household/edit-household.ts';
import type { Household } from '../household/household.ts';
import { offerText, type Writing } from '../writing/writing.ts';

/** A button beside a finding, and what it does to the household. */
export interface Fix {
  readonly label: string;
  readonly apply: (household: Household) => Household;
}

/** The reading a finding is about; null for one about the account. */
function rowOf({ path }: Finding): number | null {
  const [list, index] = path;
  return list === 'readings' && typeof index === 'number' ? index : null;
}

/** The key under which a row or the account lists the answer to a question: `code:field`. */
function answerKey(finding: Finding): string {
  const code = finding.code.replace('rolled-over', 'below-before');
  const place = String(finding.path.at(-1));
  const isField = rowOf(finding) === null || ['date', 'export', 'generation'].includes(place);
  return `${code}:${isField ? place : 'import'}`;
}

/** The new texts that an offer such as "import 4640.1, export 3151" names. */
export function offeredReadings(offer: string): RowChange {
  const pairs = offer.split(', ').map((part) => part.split(' '));
  return Object.fromEntries(
    pairs.filter(([id, text]) => id !== undefined && text !== undefined),
  ) as RowChange;
}

const use = (text: string, writing: Writing): string => `Use ${offerText(text, writing)}`;

function setField(finding: Finding, text: string): Fix['apply'] {
  const index = rowOf(finding);
  return index === null
    ? (household) => changeAccount(household, finding.path.map(String), text)
    : (household) => changeRow(household, index, { [finding.path[2] as RegisterId]: text });
}

function swapRegisters(index: number): Fix['apply'] {
  return (household) => {
    const row = household.readings[index];
    return changeRow(household, index, { import: row?.export ?? '', export: row?.import ?? '' });
  };
}

/** What puts a finding right, without keeping the text as it is. */
function corrections(finding: Finding, index: number, writing: Writing): Fix[] {
  const { code, offer, values } = finding;
  if (code === 'reading/registers-swapped')
    return [{ label: 'Swap import and export', apply: swapRegisters(index) }];
  if (code === 'reading/day-not-after')
    return [{ label: 'Put the readings in order of their dates', apply: sortRows }];
  if (code === 'reading/units-not-readings' && offer !== undefined)
    return [
      {
        label: 'Yes, units: work the readings out',
        apply: (household) => changeRow(household, index, offeredReadings(offer)),
      },
    ];
  if (code === 'reading/comma-unclear')
    return [values['grouped'] ?? '', values['decimal'] ?? ''].map((text) => ({
      label: use(text, writing),
      apply: setField(finding, text),
    }));
  return offer === undefined ? [] : [{ label: use(offer, writing), apply: setField(finding, offer) }];
}

/** "It is right, keep it", where a finding can be kept. */
function keeping(finding: Finding, writing: Writing): Fix[] {
  const apply: Fix['apply'] = (household) => answer(household, rowOf(finding), answerKey(finding));
  if (finding.code === 'reading/below-before')
    return [
      { label: `It passed ${offerText(finding.values['top'] ?? 'its full scale', writing)}: confirm`, apply },
    ];
  return finding.severity === 'question' ? [{ label: 'It is right, keep it', apply }] : [];
}

/** Whether somebody answered a finding with "it is right". */
export function isAnswered(finding: Finding, { account, readings }: Household): boolean {
  const index = rowOf(finding);
  const { confirmed } = index === null ? account : (readings[index] ?? {});
  return confirmed?.includes(answerKey(finding)) === true;
}

/**
 * The buttons of a finding: the offered corrections first, then "it is right, keep it"; for one that was
 * answered, the way to ask again.
 */
export function fixesFor(finding: Finding, household: Household, writing: Writing): readonly Fix[] {
  const index = rowOf(finding);
  if (isAnswered(finding, household))
    return [{ label: 'Ask again', apply: (held) => answer(held, index, answerKey(finding)) }];
  if (finding.severity === 'note') return [];
  return [...corrections(finding, index ?? 0, writing), ...keeping(finding, writing)];
}
