import type { Finding, RegisterId } from '@unitbook/engine';
import {
  answerAccount,
  answerRow,
  changeAccount,
  changeRow,
  sortRows,
  type RowChange,
} from '../household/edit-household.ts';
import type { Household } from '../household/household.ts';
import { localText, type Writing } from '../writing/writing.ts';

/** A button beside a finding, and what it does to the household. */
export interface Fix {
  readonly label: string;
  readonly apply: (household: Household) => Household;
}

/** The key under which a row lists the answer to a question: `code:register`. */
function answerKey(finding: Finding): string {
  const place = finding.path.at(-1);
  const register = place === 'date' || place === 'export' || place === 'generation' ? place : 'import';
  return `${finding.code}:${register}`;
}

/** The new texts that an offer such as "import 4640.1, export 3151" names. */
export function offeredReadings(offer: string): RowChange {
  const pairs = offer.split(', ').map((part) => part.split(' '));
  return Object.fromEntries(
    pairs.filter(([id, text]) => id !== undefined && text !== undefined),
  ) as RowChange;
}

const use = (text: string, writing: Writing): string => `Use ${localText(text, writing)}`;

function setField(finding: Finding, text: string): Fix['apply'] {
  const [list, index, field] = finding.path;
  if (list === 'readings' && typeof index === 'number')
    return (household) => changeRow(household, index, { [field as RegisterId]: text });
  return (household) => changeAccount(household, finding.path.map(String), text);
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
function keeping(finding: Finding, index: number | null, writing: Writing): Fix[] {
  if (finding.code === 'reading/below-before' && index !== null) {
    return [
      {
        label: `It passed ${localText(finding.values['top'] ?? 'its full scale', writing)}: confirm`,
        apply: (household) => answerRow(household, index, answerKey(finding)),
      },
    ];
  }
  if (finding.severity !== 'question') return [];
  const key = index === null ? `${finding.code}:${finding.path.join('.')}` : answerKey(finding);
  return [
    {
      label: 'It is right, keep it',
      apply: (household) =>
        index === null ? answerAccount(household, key) : answerRow(household, index, key),
    },
  ];
}

/** The answer key that a finding was quieted by, or null where nobody answered it. */
export function answeredKey(finding: Finding, household: Household): string | null {
  const [list, index] = finding.path;
  if (list !== 'readings' || typeof index !== 'number') {
    const key = `${finding.code}:${finding.path.join('.')}`;
    return household.confirmed?.includes(key) === true ? key : null;
  }
  const own = answerKey(finding);
  const key = finding.code === 'reading/rolled-over' ? own.replace('rolled-over', 'below-before') : own;
  return household.readings[index]?.confirmed?.includes(key) === true ? key : null;
}

/**
 * The buttons of a finding: the offered corrections first, then "it is right, keep it"; for one that was
 * answered, the way to ask again.
 */
export function fixesFor(finding: Finding, household: Household, writing: Writing): readonly Fix[] {
  const row = finding.path[0] === 'readings' ? finding.path[1] : undefined;
  const index = typeof row === 'number' ? row : null;
  const key = answeredKey(finding, household);
  if (key !== null)
    return [
      {
        label: 'Ask again',
        apply: (held) => (index === null ? answerAccount(held, key) : answerRow(held, index, key)),
      },
    ];
  if (finding.severity === 'note') return [];
  return [...corrections(finding, index ?? 0, writing), ...keeping(finding, index, writing)];
}
