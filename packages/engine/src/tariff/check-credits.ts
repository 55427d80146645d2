import { isDecimalText, type Finding, type Path } from '../quantity/index.ts';
import { tariffFinding } from './findings.ts';
import type { Charge, TariffDocument } from './schema.ts';

type Credit = Charge & { kind: 'credit' };

function incomplete(path: Path, found: string, expected: string, remedy: string): Finding {
  return tariffFinding('tariff/credit-incomplete', { path }, { found, expected, remedy });
}

/** The ledgers of money that settlement rules declare. */
function moneyLedgers({ settlements }: TariffDocument): readonly string[] {
  return settlements.flatMap((rule) =>
    rule.scheme === 'ledgers'
      ? (rule.ledgers ?? []).filter(({ unit }) => unit === 'money').map(({ id }) => id)
      : [],
  );
}

function ledgerFindings(
  credit: Credit,
  before: readonly Charge[],
  document: TariffDocument,
  path: Path,
): Finding[] {
  const { ledger, left } = credit;
  if (ledger === undefined) {
    return left === 'carried'
      ? [
          incomplete(
            [...path, 'left'],
            'credit that is carried, without a "ledger"',
            'the money ledger that takes it',
            'Add "ledger", or let what is left lapse.',
          ),
        ]
      : [];
  }
  if (left === 'lapses') {
    return [
      incomplete(
        [...path, 'left'],
        'credit of a ledger that lapses with every bill',
        '"left": "carried", and a "close" in the ledger that says when it lapses',
        'Write "carried", or take "ledger" out.',
      ),
    ];
  }
  return knownLedger(ledger, { before, document, path });
}

/** The ledger that a credit names has to be one of money, and no other credit's. */
function knownLedger(
  ledger: string,
  { before, document, path }: { before: readonly Charge[]; document: TariffDocument; path: Path },
): Finding[] {
  const known = moneyLedgers(document);
  if (!known.includes(ledger)) {
    const list = known.map((name) => `"${name}"`).join(', ') || 'none';
    return [
      incomplete(
        [...path, 'ledger'],
        `the ledger "${ledger}"`,
        `one of the ledgers of money: ${list}`,
        'Declare it under "ledgers" of the settlement, or correct the name.',
      ),
    ];
  }
  const isTaken = before.some((charge) => charge.kind === 'credit' && charge.ledger === ledger);
  return isTaken
    ? [
        incomplete(
          [...path, 'ledger'],
          `a second credit of the ledger "${ledger}"`,
          'one credit charge for each ledger',
          'Name all the lines it may meet in one credit charge.',
        ),
      ]
    : [];
}

/** A line earns credit once, and is not met by the credit that it earns. */
function earningFindings(credit: Credit, before: readonly Charge[], path: Path): Finding[] {
  const { earned = [], against } = credit;
  const elsewhere = before.flatMap((charge) => (charge.kind === 'credit' ? (charge.earned ?? []) : []));
  return earned.flatMap((line, index) => {
    if (against.includes(line) || elsewhere.includes(line) || earned.indexOf(line) < index) {
      const at = [...path, 'earned', index];
      return [
        incomplete(
          at,
          `"${line}" earning credit twice, or meeting itself`,
          'each line earning one credit, against other lines',
          'Name the line once.',
        ),
      ];
    }
    return [];
  });
}

/** Why a credit must not meet a line; null where it may. */
function unmeetable(line: string, index: number, credit: Credit, all: readonly Charge[]): string | null {
  const { against } = credit;
  if (against.indexOf(line) < index) return 'named twice';
  const floor = all.find(
    (charge) => charge.kind === 'minimum' && charge.as === 'floor' && charge.of.includes(line),
  );
  if (floor !== undefined) return `which the floor "${floor.id}" stands in for`;
  const credits = all.filter((charge) => charge.kind === 'credit');
  const earning = credits.find(({ id, earned = [] }) => id !== credit.id && earned.includes(line));
  if (earning !== undefined) return `which earns the credit "${earning.id}"`;
  const at = credits.findIndex(({ id }) => id === credit.id);
  const first = credits
    .slice(0, at)
    .find((other) => other.against.includes(line) && !against.includes(other.id));
  return first === undefined
    ? null
    : `which the credit "${first.id}" meets too, without that credit beside it`;
}

/** A credit meets each line once, and only what is left to be paid of it. */
function meetingFindings(credit: Credit, all: readonly Charge[], path: Path): Finding[] {
  const findings = credit.against.flatMap((line, index) => {
    const why = unmeetable(line, index, credit, all);
    if (why === null) return [];
    const expected = 'lines of which there is something left to pay';
    const remedy = 'Name the line once, the floor in its place, or the other credit beside it.';
    return [incomplete([...path, 'against', index], `"${line}", ${why}`, expected, remedy)];
  });
  if (credit.ledger !== undefined && credit.inTotal === false) {
    const found = 'a credit of a ledger that is no part of the sum';
    const remedy = 'Take "inTotal" out.';
    findings.push(incomplete([...path, 'inTotal'], found, 'a credit that the bill is less by', remedy));
  }
  return findings;
}

/** Check a charge of kind `credit`. */
export function creditFindings(
  charge: Charge,
  before: readonly Charge[],
  {
    document,
    all,
    path,
  }: { readonly document: TariffDocument; readonly all: readonly Charge[]; readonly path: Path },
): Finding[] {
  if (charge.kind !== 'credit') return [];
  const findings = [
    ...ledgerFindings(charge, before, document, path),
    ...earningFindings(charge, before, path),
    ...meetingFindings(charge, all, path),
  ];
  if (charge.earned === undefined && charge.ledger === undefined) {
    findings.push(
      incomplete(
        path,
        'a credit that nothing earns',
        '"earned", "ledger" or both',
        'Name the lines that earn it.',
      ),
    );
  }
  if (charge.rounding !== undefined && charge.percent === undefined) {
    const found = '"rounding" on a credit without "percent"';
    const expected = 'no rounding: credit is taken as it is';
    findings.push(incomplete([...path, 'rounding'], found, expected, 'Take "rounding" out.'));
  }
  if (charge.percent !== undefined && !/^(100|[1-9]?\d(\.\d+)?)$/.test(charge.percent)) {
    findings.push(
      incomplete(
        [...path, 'percent'],
        `"percent" of ${charge.percent}`,
        'a percentage from 0 to 100',
        'Correct it.',
      ),
    );
  }
  return findings;
}

/** A tax that is inside its own base is one percentage below 100. */
export function insideFindings(charge: Charge, path: Path): Finding[] {
  if (charge.kind !== 'percentage' || charge.inside !== true) return [];
  const { percent } = charge;
  if (percent === undefined) {
    return [
      tariffFinding('tariff/inside-unclear', { path: [...path, 'inside'] }, { found: '"inside" with steps' }),
    ];
  }
  if (!isDecimalText(percent) || /^[1-9]?\d(\.\d+)?$/.test(percent)) return [];
  return [
    tariffFinding(
      'tariff/inside-unclear',
      { path: [...path, 'percent'] },
      { found: `"inside" with ${percent} percent` },
    ),
  ];
}
