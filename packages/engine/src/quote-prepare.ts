import { commonMultiple, dayText, addDays, type Finding, type Outcome } from './quantity/index.ts';
import { isOpenEnded, type Tariff } from './tariff/index.ts';
import { lifeBiller, lifeTariff, raisesOf, type LifeBiller } from './quote-life.ts';
import type { Raises } from './amounts-raises.ts';
import {
  fillUnits,
  lifePeriods,
  makeLifeUnits,
  moneyGrid,
  percentFactor,
  quoteFinding,
  yearFactors,
  type LifeUnits,
  type QuoteInput,
  type Share,
} from './quote/index.ts';

/** A quote with everything that its bills need. */
export interface PreparedQuote {
  readonly input: QuoteInput;
  /** The tariff of the life: what is in force at its end goes on. */
  readonly tariff: Tariff;
  readonly biller: LifeBiller;
  readonly units: LifeUnits;
  readonly share: Share;
  readonly raises: Raises | null;
  /** Money of the quote is in whole 1/grid. */
  readonly grid: number;
}

const NOTHING: Share = { numerator: 0, denominator: 100 };
/** As much as use and generation allow. */
export const ALL: Share = { numerator: 100, denominator: 100 };

/** The charges of all versions by id, with what keeps one from rising. */
function chargesOf({ document }: Tariff): ReadonlyMap<string, string | null> {
  const charges = document.versions.flatMap((version) => version.charges);
  return new Map(
    charges.map(({ id, kind, ...rest }) => {
      if (kind === 'percentage') return [id, 'is a percentage'] as const;
      if (kind === 'credit') return [id, 'sets credit off'] as const;
      const own = 'rounding' in rest ? rest.rounding : undefined;
      const isPlain = (own ?? document.rounding.line) === 'none';
      return [id, isPlain ? 'is not rounded by the tariff' : null] as const;
    }),
  );
}

function escalationFindings({ document }: QuoteInput, tariff: Tariff): readonly Finding[] {
  const known = chargesOf(tariff);
  return Object.entries(document.escalation.charges).flatMap(([charge, percent]) => {
    const path = ['escalation', 'charges', charge];
    const why = known.get(charge);
    if (why === undefined) {
      return [
        quoteFinding('quote/charge-unknown', { path }, { charge, known: [...known.keys()].join(', ') }),
      ];
    }
    if (why === null || /^-?0+(\.0+)?$/.test(percent)) return [];
    const remedy = why.includes('rounded')
      ? 'Leave it out, or let the tariff round its lines.'
      : 'Leave it out: it follows its base.';
    return [quoteFinding('quote/charge-cannot-rise', { path }, { charge, why, remedy })];
  });
}

/** That charges or settlement end within the life. */
function endFindings(input: QuoteInput, { versions, settlements }: Tariff): readonly Finding[] {
  const through = lifePeriods(input).at(-1)?.to;
  const ends = (period: { readonly to: typeof through } | undefined, part: string): readonly Finding[] => {
    if (
      period?.to === undefined ||
      through === undefined ||
      isOpenEnded(period as never) ||
      period.to >= through
    )
      return [];
    const values = { last: dayText(addDays(period.to, -1)), part, through: dayText(addDays(through, -1)) };
    return [quoteFinding('quote/tariff-goes-on', { path: ['years'] }, values)];
  };
  return [
    ...ends(versions.at(-1)?.period, 'its charges'),
    ...ends(settlements.at(-1)?.period, 'its settlement'),
  ];
}

/** Factors of the charges that rise, in the order of the document. */
export function chargeFactors({ document: { escalation }, years }: QuoteInput) {
  const rising = Object.entries(escalation.charges).filter(([, percent]) => !/^-?0+(\.0+)?$/.test(percent));
  return {
    raised: rising.map(([id]) => id),
    factors: rising.map(([, percent]) => yearFactors(years, [percentFactor(percent)])),
  };
}

function blocksFinding({ document }: Tariff): readonly Finding[] {
  const { timeBlocks } = document;
  if (timeBlocks === undefined) return [];
  const blocks = timeBlocks.blocks.map(({ id }) => id).join(', ');
  return [quoteFinding('quote/needs-profile', { path: ['selfUse'] }, { blocks })];
}

type Document = Tariff['document'];

/**
 * Make the bills of a quote ready: check it against its tariff, and bring the tariff into the form of the life.
 *
 * @param change  the tariff of a case; left out: as it is
 */
export function prepareQuote(
  input: QuoteInput,
  tariff: Tariff,
  change?: (document: Document) => Document,
): Outcome<PreparedQuote | null> {
  const errors = [...escalationFindings(input, tariff), ...blocksFinding(tariff)];
  const notes = [
    ...endFindings(input, tariff),
    ...(input.share === null ? [quoteFinding('quote/self-use-unknown', { path: ['selfUse'] })] : []),
  ];
  if (errors.length > 0) return { value: null, findings: [...errors, ...notes] };
  const life = lifeTariff(tariff, input.document.payable, change);
  if (life.value === null) return { value: null, findings: life.findings };
  const { raised, factors } = chargeFactors(input);
  const { quantities } = input.document;
  const biller = lifeBiller(life.value, { ...input, quantities }, raised);
  const share = input.share ?? NOTHING;
  const units = makeLifeUnits(input.years * 12);
  fillUnits(input, share, units);
  const raises = raisesOf(factors, input.years);
  const billed = biller.run(units, raises, 'both');
  if (billed.length > 0) return { value: null, findings: [...notes, ...billed] };
  const grid = commonMultiple(biller.bills.grid, moneyGrid(tariff.document.currency));
  return { value: { input, tariff: life.value, biller, units, share, raises, grid }, findings: notes };
}
