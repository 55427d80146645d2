import { commonMultiple, dayText, addDays, type Finding, type Outcome } from './quantity/index.ts';
import { isOpenEnded, type Tariff } from './tariff/index.ts';
import { lifeBiller, lifeTariff, raisesOf, type LifeBiller } from './quote-life.ts';
import type { Raises } from './amounts-raises.ts';
import { clockOf } from './keep-intervals.ts';
import { needsProfile, nettingWindows } from './quote-netting-windows.ts';
import { plantLimitFindings } from './quote-plant-limit.ts';
import {
  emptyMonths,
  fillUnits,
  lifePeriods,
  makeLifeUnits,
  moneyGrid,
  ownUseOf,
  percentFactor,
  quoteFinding,
  rateFactors,
  readProfile,
  unitColumns,
  withRisenSurplus,
  type LifeUnits,
  type QuoteFindingCode,
  type QuoteInput,
  type QuoteProfile,
  type ReadProfile,
  type Share,
  type YearFactors,
} from './quote/index.ts';

/** A quote with everything that its bills need. */
export interface PreparedQuote {
  readonly input: QuoteInput;
  /** The tariff of the life: what is in force at its end goes on. */
  readonly tariff: Tariff;
  readonly biller: LifeBiller;
  readonly units: LifeUnits;
  /** Own use follows from the profile, or else from the share; see `ownUseOf`. */
  readonly share: Share;
  readonly profile: ReadProfile | null;
  /** Whether the battery of the document, if it has one, is in the units. */
  readonly hasBattery: boolean;
  readonly raises: Raises | null;
  /** Money of the quote is in whole 1/grid. */
  readonly grid: number;
}

/** Nothing is used as it is made. */
export const NOTHING: Share = { numerator: 0, denominator: 100 };
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
export function chargeFactors(input: Pick<QuoteInput, 'document' | 'years' | 'ratesOfYear'>) {
  const { escalation } = input.document;
  const rising = Object.entries(escalation.charges).filter(([, percent]) => !/^-?0+(\.0+)?$/.test(percent));
  // Most quotes let all charges rise alike.
  const known = new Map<string, YearFactors>();
  const factorsOf = (percent: string): YearFactors => {
    const factors = known.get(percent) ?? rateFactors(input, percentFactor(percent));
    known.set(percent, factors);
    return factors;
  };
  return {
    raised: rising.map(([id]) => id),
    factors: rising.map(([, percent]) => factorsOf(percent)),
  };
}

/** Asks where a quote that names its tariff is worked out by another one. */
function otherTariff({ document }: QuoteInput, { document: { id, name } }: Tariff): readonly Finding[] {
  const own = document.tariff;
  if (own === undefined || own.id === id) return [];
  const values = { own: own.name ?? own.id, other: name };
  return [quoteFinding('quote/other-tariff', { path: ['tariff'] }, values)];
}

type Document = Tariff['document'];

/** What a quote is prepared with besides its document. */
export interface PrepareOptions {
  /** Use and generation by intervals, or the same already read under the time blocks and windows of the tariff. */
  readonly profile?: QuoteProfile | ReadProfile | null | undefined;
  /** false: as if the document had no battery. */
  readonly withBattery?: boolean;
}

/** A profile under the time blocks and windows of a tariff, read where it is not yet; null: there is none, or it is of no use. */
export function readProfileOf(
  profile: PrepareOptions['profile'],
  { document }: Tariff,
): Outcome<ReadProfile | null> {
  if (profile == null) return { value: null, findings: [] };
  if ('months' in profile) return { value: profile, findings: [] };
  const clockFor = (minutes: number) =>
    document.timeBlocks === undefined ? null : clockOf(document, minutes);
  return readProfile(profile, clockFor, nettingWindows(document));
}

/** The profile of a quote, checked against the months that it gives a shape. */
function profileOf(
  input: QuoteInput,
  tariff: Tariff,
  { profile }: PrepareOptions,
): Outcome<ReadProfile | null> {
  const read = readProfileOf(profile, tariff);
  if (read.value === null) return read;
  const empty = emptyMonths(read.value, input);
  return { value: empty.length > 0 ? null : read.value, findings: [...read.findings, ...empty] };
}

/** What has to be known of how own use comes about. */
function ownUseNotes({ share, document }: QuoteInput, hasProfile: boolean): readonly Finding[] {
  const note = (code: QuoteFindingCode, path: string, values = {}) =>
    quoteFinding(code, { path: [path] }, values);
  if (hasProfile) {
    const percent = document.selfUse?.share;
    return share === null || percent === undefined
      ? []
      : [note('quote/share-beside-profile', 'selfUse', { share: percent })];
  }
  return [
    ...(share === null ? [note('quote/self-use-unknown', 'selfUse')] : []),
    ...(document.battery === undefined ? [] : [note('quote/battery-estimated', 'battery')]),
  ];
}

/**
 * Make the bills of a quote ready: check it against its tariff, and bring the tariff into the form of the life.
 *
 * Own use is that of the profile, or else the share of the document; where there is neither, nothing is used as it
 * is made. Under time blocks, units of a block are whole steps of the quote, by largest remainder; measures that are
 * netted inside windows are what meets there taken off the plain units, in whole steps.
 *
 * @param change   the tariff of a case; left out: as it is
 * @param options  an interval profile; whether the battery counts
 */
export function prepareQuote(
  input: QuoteInput,
  tariff: Tariff,
  change?: (document: Document) => Document,
  options: PrepareOptions = {},
): Outcome<PreparedQuote | null> {
  const read = profileOf(input, tariff, options);
  const errors = [
    ...escalationFindings(input, tariff),
    ...(options.profile == null ? needsProfile(tariff) : []),
    ...read.findings.filter(({ severity }) => severity === 'error'),
  ];
  const notes = [
    ...otherTariff(input, tariff),
    ...read.findings.filter(({ severity }) => severity !== 'error'),
    ...endFindings(input, tariff),
    // Of a profile that cannot be used there is nothing to add.
    ...(options.profile != null && read.value === null ? [] : ownUseNotes(input, read.value !== null)),
  ];
  if (errors.length > 0) return { value: null, findings: [...errors, ...notes] };
  const { payable, escalation } = input.document;
  const life = lifeTariff(tariff, payable, (document) =>
    withRisenSurplus(change === undefined ? document : change(document), escalation.surplus, input),
  );
  if (life.value === null) return { value: null, findings: life.findings };
  const load = input.document.quantities['sanctioned-load'];
  const over = plantLimitFindings(life.value, { ...input, load });
  if (over.length > 0) return { value: null, findings: [...over, ...notes] };
  const own = { profile: read.value, hasBattery: options.withBattery !== false };
  const { value, findings } = billsOf(input, life.value, own);
  return { value, findings: [...notes, ...findings] };
}

/** Make the units of a quote, and bill them. */
function billsOf(
  input: QuoteInput,
  tariff: Tariff,
  { profile, hasBattery }: Pick<PreparedQuote, 'profile' | 'hasBattery'>,
): Outcome<PreparedQuote | null> {
  const { quantities, settlementDay } = input.document;
  const { raised, factors } = chargeFactors(input);
  const share = input.share ?? NOTHING;
  const own = ownUseOf({ input, share, profile, hasBattery });
  const names = unitColumns(own.blocks, own.measures);
  const biller = lifeBiller(tariff, { ...input, quantities, settlementDay, names }, raised);
  const units = makeLifeUnits(input.years * 12, names.length);
  fillUnits(input, own, units);
  const raises = raisesOf(factors, input.years);
  const findings = biller.run(units, raises, 'both');
  if (findings.length > 0) return { value: null, findings };
  const grid = commonMultiple(biller.bills.grid, moneyGrid(tariff.document.currency));
  return { value: { input, tariff, biller, units, share, profile, hasBattery, raises, grid }, findings };
}

/** Whether what surplus is paid rises the same way: it stands in the tariff of the life. */
function isSameSurplus({ document }: QuoteInput, { document: before }: QuoteInput): boolean {
  const [own, other] = [document.escalation.surplus, before.escalation.surplus];
  return own?.percent === other?.percent && own?.step === other?.step;
}

const sameList = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((id, at) => id === other[at]);

/**
 * Bill a quote whose numbers changed by what was prepared before: other units, shares, sizes and rises of the same
 * charges. What a slider changes takes a fraction of a millisecond so.
 *
 * @param before  prepared under the same tariff, powers, start, settlement day, life and rounding; its bills are made anew
 * @returns       null where the quote has to be prepared from the beginning, and where something is to be found
 */
export function prepareAgain(before: PreparedQuote, input: QuoteInput): PreparedQuote | null {
  const { tariff, biller, profile, hasBattery } = before;
  const load = input.document.quantities['sanctioned-load'];
  const isSame =
    input.years === before.input.years &&
    input.start === before.input.start &&
    input.ratesOfYear === before.input.ratesOfYear &&
    isSameSurplus(input, before.input) &&
    (input.share === null) === (before.input.share === null);
  const raises = isSame ? raisesAgain(before, input) : undefined;
  if (raises === undefined || plantLimitFindings(tariff, { ...input, load }).length > 0) return null;
  const share = input.share ?? NOTHING;
  const own = ownUseOf({ input, share, profile, hasBattery });
  const units = makeLifeUnits(input.years * 12, before.units.width);
  fillUnits(input, own, units);
  const isBilled = biller.run(units, raises, 'changed').length === 0;
  return isBilled ? { ...before, input, share, units, raises } : null;
}

/** The rises of a quote that changed: those it had, where none did; undefined where other charges rise. */
function raisesAgain(before: PreparedQuote, input: QuoteInput): Raises | null | undefined {
  const rises = ({ document }: QuoteInput) => Object.entries(document.escalation.charges).flat();
  if (sameList(rises(input), rises(before.input))) return before.raises;
  const { raised, factors } = chargeFactors(input);
  // Of no years there is nothing to work out but which charges rise.
  if (!sameList(raised, chargeFactors({ ...before.input, years: 0 }).raised)) return undefined;
  return raisesOf(factors, input.years, before.raises?.rows);
}
