import type { Finding } from '@unitbook/engine';
import {
  answer,
  changeAccount,
  changeRegisters,
  changeRow,
  mapRow,
  sortRows,
} from '../household/edit-household.ts';
import { isEvent, type Household } from '../household/household.ts';
import { dateEvent } from '../household/meter-change.ts';
import { keyOfPath } from '../household/registers.ts';
import { offerText, type Writing } from '../writing/writing.ts';
import type { Fix } from './fix.ts';
import { meterFixes } from './meter-fixes.ts';

/** The reading a finding is about; null for one about the account. */
function rowOf({ path }: Finding): number | null {
  const [list, index] = path;
  return list === 'readings' && typeof index === 'number' ? index : null;
}

/** The key under which a row or the account lists the answer to a question: `code:field`. */
function answerKey(finding: Finding): string {
  const code = finding.code.replace('rolled-over', 'below-before');
  const place = rowOf(finding) === null ? String(finding.path.at(-1)) : keyOfPath(finding.path);
  return `${code}:${place}`;
}

/** The new texts that an offer such as "import 4640.1, export rate 1 3151" names, by register. */
export function offeredReadings(offer: string): Readonly<Record<string, string>> {
  const parts = [...offer.matchAll(/(\w+)(?: rate (\w+))? ([\d.]+)(?:, |$)/g)];
  return Object.fromEntries(
    parts.map(([, id = '', rate, text = '']) => [rate === undefined ? id : `${id}-${rate}`, text]),
  );
}

const use = (text: string, writing: Writing): string => `Use ${offerText(text, writing)}`;

function setField(finding: Finding, text: string): Fix['apply'] {
  const index = rowOf(finding);
  if (index === null) return (household) => changeAccount(household, finding.path.map(String), text);
  if (finding.path[2] !== 'date')
    return (household) => changeRegisters(household, index, { [keyOfPath(finding.path)]: text });
  return (household) => {
    const row = household.readings[index];
    const isOfChange = row !== undefined && isEvent(row);
    return isOfChange ? dateEvent(household, index, text) : changeRow(household, index, { date: text });
  };
}

/** Import and export change places, and their rates with them. */
function swapRegisters(index: number): Fix['apply'] {
  return (household) => {
    const row = household.readings[index];
    const turned = changeRow(household, index, { import: row?.export ?? '', export: row?.import ?? '' });
    const rates = row?.rates;
    if (rates === undefined) return turned;
    return mapRow(turned, index, (held) => ({
      ...held,
      rates: { import: rates.export, export: rates.import },
    }));
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
        apply: (household) => changeRegisters(household, index, offeredReadings(offer)),
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
 * The buttons of a finding: the offered corrections first, then "it is right, keep it", then what a changed
 * meter asks for; for one that was answered, the way to ask again.
 */
export function fixesFor(finding: Finding, household: Household, writing: Writing): readonly Fix[] {
  const index = rowOf(finding);
  if (isAnswered(finding, household))
    return [{ label: 'Ask again', apply: (held) => answer(held, index, answerKey(finding)) }];
  if (finding.severity === 'note') return [];
  const { first, last } = meterFixes(finding, household, writing);
  return [
    ...(first ?? corrections(finding, index ?? 0, writing)),
    ...keeping(finding, writing),
    ...(last ?? []),
  ];
}
