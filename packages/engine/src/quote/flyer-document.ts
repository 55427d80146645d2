import * as z from 'zod/mini';
import type { Finding, Outcome } from '../quantity/index.ts';
import { decimalText, inFileOrder, locate, readDocument } from '../tariff/index.ts';
import { plainText } from './document/fields.ts';
import { quoteFinding } from './findings.ts';
import { rangeFindings, RANGES, type Range } from './ranges.ts';

const { kWp, money, yearUnits: units, rise } = RANGES;
const payback: Range = { what: 'a payback in years', least: '0', most: '100', places: 4 };
const rate: Range = { what: 'an amount for a unit', least: '0', most: '1000000', places: 6 };

/** The flyer document as zod checks it. */
export const flyerSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-flyer-1'),
  claimedSize: z.optional(decimalText('kWp of the plant that it offers')),
  claimedSaving: z.optional(decimalText('What it says is saved in a year')),
  claimedPayback: z.optional(decimalText('Years after which it says the price has come back')),
  claimedGeneration: z.optional(decimalText('kWh it says the plant makes in a year')),
  claimedRate: z.optional(decimalText('Amount for a unit that it reckons with')),
  price: z.optional(decimalText('Its price before the subsidy')),
  subsidy: z.optional(decimalText('The subsidy that it counts on')),
  netPrice: z.optional(decimalText('Its price after the subsidy')),
  monthlyBillAfter: z.optional(decimalText('What it says is left of the bill in a month')),
  escalation: z.optional(decimalText('Percent that it says rates rise by each year')),
  words: z.optional(plainText('What it says in words')),
});

/** What a rival's flyer claims, typed in: every number a text as it is printed. */
export type FlyerDocument = z.infer<typeof flyerSchema>;

/** A claim of a flyer that is a number. */
export type FlyerClaim = Exclude<keyof FlyerDocument, '$schema' | 'format' | 'words'>;

/** What each number of a flyer may be, in the order in which it is looked at. */
const CLAIM_RANGES: Readonly<Record<FlyerClaim, Range>> = {
  claimedSize: kWp,
  claimedSaving: money,
  claimedPayback: payback,
  claimedGeneration: units,
  claimedRate: rate,
  price: money,
  subsidy: money,
  netPrice: money,
  monthlyBillAfter: money,
  escalation: rise,
};

/** The numbers a flyer can claim, in the order in which they are looked at. */
export const FLYER_CLAIMS: readonly FlyerClaim[] = Object.keys(CLAIM_RANGES) as FlyerClaim[];

/** Numbers out of their range, and that there is nothing to look at. */
function flyerFindings(flyer: FlyerDocument): readonly Finding[] {
  const wrong = FLYER_CLAIMS.flatMap((claim) => rangeFindings(flyer[claim], CLAIM_RANGES[claim], [claim]));
  const isEmpty = FLYER_CLAIMS.every((claim) => flyer[claim] === undefined);
  if (!isEmpty || (flyer.words ?? '').trim() !== '') return wrong;
  return [quoteFinding('quote/flyer-empty', { path: [] })];
}

/**
 * Read a rival's flyer that was typed in, and list everything that is wrong with it.
 *
 * @param text  the JSON file, whole
 * @returns     the flyer, or null when it cannot be used; findings with line and column, in file order. A flyer
 *              without a claim is asked about, and can be used
 * @example
 * readFlyer('{"format":"unitbook-flyer-1","claimedPayback":"3.7"}').value.claimedPayback //=> "3.7"
 * readFlyer('{"format":"unitbook-flyer-1","claimedPayback":"-1"}').value //=> null
 */
export function readFlyer(text: string): Outcome<FlyerDocument | null> {
  const read = readDocument<FlyerDocument>(text, flyerSchema);
  const checked = read.mended === null ? [] : flyerFindings(read.mended);
  const isWrong = checked.some(({ severity }) => severity === 'error');
  const findings = inFileOrder([...read.findings, ...checked.map((finding) => locate(read.source, finding))]);
  return { value: isWrong ? null : read.value, findings };
}
