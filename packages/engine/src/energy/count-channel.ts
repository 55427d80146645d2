import {
  addQuotients,
  dayText,
  exactText,
  isSameQuotient,
  unfoldingFigure,
  wholeProduct,
  wholeSteps,
  type Figure,
  type FigureKind,
  type Finding,
  type Outcome,
} from '../quantity/index.ts';
import { shownBy, type ReadingPair, type RegisterId, type Stretch } from '../readings/index.ts';
import { countStretch, countUnits, plainDifferenceOf, UNIT_LABELS, type UnitsRule } from './count-units.ts';
import { energyFinding } from './findings.ts';

const THOUSAND = 1000;
const STEPS = { '0': 1000, '1': 100, '2': 10, '3': 1 } as const;
const STEP_TEXTS = { '0': '1', '1': '0.1', '2': '0.01', '3': '0.001' } as const;
const NONE: readonly never[] = [];

/** What several stretches came to, of which sum and rounding are told. */
interface SumSource {
  readonly parts: readonly Figure[];
  readonly rule: UnitsRule;
}

/** What one meter counted, times its factor, not rounded yet. */
function partOf(stretch: Stretch): Figure {
  const { register, from, to } = stretch;
  const { numerator, denominator, text } = register.factor;
  const difference = plainDifferenceOf(stretch);
  const rate = register.rate === null ? '' : `, rate ${register.rate}`;
  return {
    id: `${register.key}-${dayText(from.day)}`,
    label: `${UNIT_LABELS[register.id]}${rate}, ${dayText(from.day)} to ${dayText(to.day)}`,
    unit: 'kWh',
    numerator: wholeProduct(difference.numerator as number, numerator),
    denominator: denominator * THOUSAND,
    operation: 'product',
    inputs: [difference],
    parameters:
      text === '1' ? NONE : [{ name: 'multiplying factor', text, unit: 'ratio', clause: 'account' }],
    rounding: null,
    clause: '',
  };
}

function sumKind(id: string, label: string): FigureKind<SumSource> {
  return {
    id,
    label,
    unit: 'kWh',
    denominator: THOUSAND,
    operation: 'sum',
    clause: '',
    inputs: ({ parts }) => parts,
    rounding: ({ parts, rule }, numerator) => {
      const exact = addQuotients(parts);
      if (isSameQuotient(exact, { numerator, denominator: THOUSAND })) return null;
      const { clause, rounding, decimals } = rule;
      return { step: STEP_TEXTS[decimals], mode: rounding, clause, ...exact };
    },
  };
}

/** The sum of some stretches: rounded once, or each of its readings, as the rule says. */
function sumOf(
  stretches: readonly Stretch[],
  words: { readonly id: string; readonly label: string },
  rule: UnitsRule,
): Figure {
  const parts = stretches.map((stretch) =>
    rule.roundedAt === 'reading' ? countStretch(stretch, rule) : partOf(stretch),
  );
  const step = STEPS[rule.decimals];
  const steps = wholeSteps(addQuotients(parts), { numerator: step, denominator: THOUSAND }, rule.rounding);
  return unfoldingFigure(sumKind(words.id, words.label), steps * step, { parts, rule });
}

/** A register of all units that was read at both ends, where rates are counted besides. */
function totalStretch(id: 'import' | 'export', { from, to, span }: ReadingPair): Stretch | null {
  const register = span.totals[id];
  const [before, after] = [shownBy(from, register), shownBy(to, register)];
  if (before === null || after === null || after < before) return null;
  return { register, from, to, passed: false, beganAnew: false };
}

/**
 * The units of a channel in a period: of one register, or the sum of what its rates or the meters that
 * followed each other counted.
 *
 * @param id         import, export or generation
 * @param pair       two readings in a row
 * @param rule       how the tariff counts units
 * @param isByRates  whether rates make the total even where it was read: they are billed one by one
 * @returns          in kWh, counted in whole watt-hours; null where the account has no such register
 */
export function countChannel(
  id: RegisterId,
  pair: ReadingPair,
  rule: UnitsRule,
  isByRates: boolean,
): Figure | null {
  const { stretches, span } = pair;
  const register = span.totals[id];
  if (register === null) return null;
  if (stretches === null) return countUnits(register, pair, rule);
  const own = stretches.filter((stretch) => stretch.register.id === id);
  const isRates = own.length > 0 && own.every((stretch) => stretch.register.rate !== null);
  const isWhole = own.every(({ from, to }) => from === pair.from && to === pair.to);
  const total = isRates && isWhole && !isByRates && id !== 'generation' ? totalStretch(id, pair) : null;
  if (total !== null) return countStretch(total, rule);
  const [only] = own;
  if (own.length === 1 && only !== undefined) return countStretch(only, rule);
  return own.length === 0 ? null : sumOf(own, { id, label: UNIT_LABELS[id] }, rule);
}

/** Units of a channel in one time block. */
export type BlockUnits = Readonly<Record<string, Figure>>;

/**
 * The units of every time block, where the registers of the rates are named for blocks of the tariff.
 *
 * @param pair    two readings in a row
 * @param rule    how the tariff counts units
 * @param blocks  of the tariff
 * @returns       figures by names such as "import@peak"; null with a finding where a rate stands for none
 */
export function countBlocks(
  pair: ReadingPair,
  rule: UnitsRule,
  blocks: readonly string[],
): Outcome<BlockUnits | null> {
  const rates = (pair.stretches ?? []).filter(({ register }) => register.rate !== null);
  if (rates.length === 0 || blocks.length === 0) return { value: {}, findings: NONE };
  const findings: Finding[] = [];
  const units: Record<string, Figure> = {};
  for (const id of ['import', 'export'] as const) {
    const own = rates.filter(({ register }) => register.id === id);
    if (own.length === 0) continue;
    findings.push(...strayRates(own, blocks, pair));
    for (const block of blocks) {
      const name = `${id}@${block}`;
      const inBlock = own.filter(({ register }) => register.block === block);
      units[name] = sumOf(inBlock, { id: name, label: `${UNIT_LABELS[id]}, ${block}` }, rule);
    }
  }
  return { value: findings.length > 0 ? null : units, findings };
}

/** Rates that stand for no time block of the tariff: what they counted would be in no price. */
function strayRates(own: readonly Stretch[], blocks: readonly string[], pair: ReadingPair): Finding[] {
  const stray = own.filter(({ register }) => register.block === null || !blocks.includes(register.block));
  const keys = new Map(stray.map(({ register }) => [register.key, register]));
  return [...keys.values()].map(({ id, rate, block }) => {
    const values = { register: `${id} rate ${rate ?? ''}`, block: block ?? '', blocks: blocks.join(', ') };
    return energyFinding('energy/rate-without-block', { path: pair.to.path }, values);
  });
}

/** Units as text, for messages. */
export const unitsText = (figure: Figure): string => exactText(figure.numerator, figure.denominator);
