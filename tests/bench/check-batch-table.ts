/**
 * Tables of printed bills of the invented utility TARESCO, made without the engine: the order of Tarumira (category
 * D-1, 2024) in whole hundredths of a rupee. Project reference "Why a net-metered bill is wrong", section 2.1, 2025.
 */

/** What a table is made of. */
export interface TableTerms {
  readonly accounts: number;
  /** How many of a thousand bills are wrong. */
  readonly wrongOfThousand: number;
  /** Where the numbers of the accounts begin. */
  readonly first?: number;
}

/** The names of the columns. */
export const TABLE_HEADER = [
  'account',
  'from',
  'to',
  'sanctioned-load',
  'import',
  'export',
  'opening',
  'printed.opening.credit',
  'printed.units.billed',
  'printed.line.fixed',
  'printed.line.energy',
  'printed.line.fuel',
  'printed.line.tax',
  'printed.line.subsidy',
  'printed.payable',
].join(',');

interface Bill {
  readonly load: number;
  readonly taken: number;
  readonly opening: number;
  readonly billed: number;
  /** Units that the fuel surcharge is taken on. */
  readonly fuelled: number;
}

/** Clause 4.2: 0–50 Rs 3.00, 51–150 Rs 4.80, 151–300 Rs 6.50, above Rs 8.00, in hundredths. */
function energyOf(units: number): number {
  const upTo = (limit: number): number => Math.min(units, limit);
  return (
    upTo(50) * 300 + (upTo(150) - upTo(50)) * 480 + (upTo(300) - upTo(150)) * 650 + (units - upTo(300)) * 800
  );
}

const money = (hundredths: number): string => {
  const size = Math.abs(hundredths);
  const text = `${String(Math.floor(size / 100))}.${String(size % 100).padStart(2, '0')}`;
  return hundredths < 0 ? `-${text}` : text;
};

function printed({ load, opening, billed, fuelled }: Bill): string {
  const fixed = load * 6000;
  const energy = energyOf(billed);
  const fuel = fuelled * 40;
  // Clause 5.2 and 6: 6 % of the energy charge, half-up to the hundredth.
  const tax = Math.floor((energy * 6 + 50) / 100);
  const subsidy = -150 * Math.min(billed, 50);
  // Clause 4.4 never applies: the load is at least 3 kW, so that fixed charges alone are 180 or more.
  const payable = Math.floor((fixed + energy + fuel + tax + subsidy + 50) / 100);
  const cells = [
    String(opening),
    String(billed),
    ...[fixed, energy, fuel, tax, subsidy].map(money),
    String(payable),
  ];
  return cells.join(',');
}

/** The mistakes that are printed, one after the other: export not read, credit not brought forward, fuel on import. */
const MISTAKES = 3;

/** What is known of an account, by its number. */
function knownOf(account: number) {
  const mixed = Math.imul(account ^ 0x9e3779b9, 0x85ebca6b) >>> 0;
  const load = 3 + (mixed % 5);
  const taken = 150 + ((mixed >>> 3) % 500);
  const given = 40 + ((mixed >>> 9) % 300);
  const opening = 1 + ((mixed >>> 15) % 60);
  return { load, taken, given, opening, right: Math.max(0, taken - given - opening) };
}

/** Whether the bill of an account is printed wrong: only one that bills units, so that every mistake shows. */
export const isWrongRow = (account: number, { wrongOfThousand }: TableTerms): boolean =>
  (account * 7) % 1000 < wrongOfThousand && knownOf(account).right > 0;

/** The row of an account; whether it is wrong, and how, follows from its number. */
export function tableRow(account: number, terms: TableTerms): string {
  const { load, taken, given, opening, right } = knownOf(account);
  const mistake = isWrongRow(account, terms) ? account % MISTAKES : -1;
  const shownOpening = mistake === 1 ? 0 : opening;
  const billed =
    mistake === 0 ? Math.max(0, taken - opening) : mistake === 1 ? Math.max(0, taken - given) : right;
  const fuelled = mistake === 2 ? taken : billed;
  const name = `TAR-${String(account).padStart(9, '0')}`;
  const known = `${name},2025-05-01,2025-05-31,${String(load)},${String(taken)},${String(given)},${String(opening)}`;
  return `${known},${printed({ load, taken, opening: shownOpening, billed, fuelled })}\n`;
}

const ROWS = 4096;

/** The text of a table, piece by piece, its header first. */
export function* tablePieces(terms: TableTerms): Generator<string> {
  yield `${TABLE_HEADER}\n`;
  const first = terms.first ?? 1;
  for (let at = 0; at < terms.accounts; at += ROWS) {
    const rows: string[] = [];
    for (let row = at; row < Math.min(at + ROWS, terms.accounts); row += 1)
      rows.push(tableRow(first + row, terms));
    yield rows.join('');
  }
}
