import type { Register, RegisterId } from '@unitbook/engine';
import type { RowRegister } from '../view/echo-rows.ts';
import type { Desk } from './desk.ts';

/** A register in words. */
export interface RegisterWords {
  readonly name: string;
  readonly hint: string;
}

/** The registers by what they count, in one word. */
export const SHORT: Readonly<Record<RegisterId, string>> = {
  import: 'Import',
  export: 'Export',
  generation: 'Generation',
};

const WHOLE: Readonly<Record<RegisterId, RegisterWords>> = {
  import: { name: 'Import, from the grid', hint: 'IMP · 1.8.0 · A+ · arrow to the house' },
  export: { name: 'Export, to the grid', hint: 'EXP · 2.8.0 · A− · arrow to the line' },
  generation: { name: 'Generation, by the plant', hint: 'grows in daylight; with its decimals' },
};

/** The codes of the registers of rates: 1.8.1 is rate 1 of import. */
const CODES = { import: '1.8', export: '2.8', generation: '' } as const;

/** A time block by its name in the open tariff. */
function blockName(block: string, { tariff }: Pick<Desk, 'tariff'>): string {
  const blocks = tariff.kind === 'open' ? (tariff.tariff.tariff.document.timeBlocks?.blocks ?? []) : [];
  return blocks.find(({ id }) => id === block)?.label ?? block;
}

/** "Import" or "Import, rate 1". */
export function shortName({ id, rate }: Pick<Register, 'id' | 'rate'>): string {
  return rate === null ? SHORT[id] : `${SHORT[id]}, rate ${rate}`;
}

/** What a register is called, and how it is found on the display. */
export function wordsOf({ register, isOptional }: RowRegister, desk: Pick<Desk, 'tariff'>): RegisterWords {
  const { id, rate, block } = register;
  if (isOptional)
    return { name: `${SHORT[id]} in all`, hint: 'if the display shows it: it checks the rates' };
  if (rate === null) return WHOLE[id];
  const code = /^\d$/.test(rate) ? `${CODES[id]}.${rate}` : '';
  const hint = [code, block === null ? '' : blockName(block, desk)].filter((part) => part !== '').join(' · ');
  return { name: shortName(register), hint };
}
