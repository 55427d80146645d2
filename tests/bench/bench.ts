import { compareWithTwin } from '../laws/twin-comparison.ts';
import { measureBatchSpeed, type BatchSpeed } from './check-batch-bench.ts';
import { measureCheck, type CheckSpeed } from './check-bench.ts';
import { measureIntervalSpeed, type IntervalReport } from './interval-bench.ts';
import { measure, type Timings } from './measure.ts';
import { measureMeterFiles, type MeterSpeed } from './meter-bench.ts';
import { measurePage, type PageReport } from './page.ts';
import { measureQuote, type QuoteReport } from './quote-bench.ts';
import { limitRow, ratioRow, timesRow, type BenchRow } from './rows.ts';
import { measureSchemes, type ExampleSpeed, type SchemeReport } from './scheme-bench.ts';
import { allSubjects, checkSameBills } from './subjects.ts';

interface Pairing {
  readonly name: string;
  readonly ours: string;
  readonly against: string;
  readonly goal: number;
  /** Whether the goal is to be so many times faster, or not more than so many times as slow. */
  readonly isFaster: boolean;
}

const PAIRINGS: readonly Pairing[] = [
  {
    name: 'plain bill / float loop',
    ours: 'plain tariff, exact',
    against: 'plain tariff, float loop',
    goal: 2.5,
    isFaster: false,
  },
  {
    name: 'demo bill / float loop',
    ours: 'demo tariff, exact',
    against: 'demo tariff, float loop',
    goal: 4,
    isFaster: false,
  },
  {
    name: 'text to traced bill / float loop',
    ours: 'text to traced bill',
    against: 'demo tariff, float loop',
    goal: 40,
    isFaster: false,
  },
  {
    name: 'the same, every step unfolded / float loop',
    ours: 'text to traced bill, all unfolded',
    against: 'demo tariff, float loop',
    goal: 40,
    isFaster: false,
  },
  {
    name: 'naive decimal.js / plain bill',
    ours: 'plain tariff, exact',
    against: 'plain tariff, naive decimal.js',
    goal: 200,
    isFaster: true,
  },
  {
    name: 'naive decimal.js / demo bill',
    ours: 'demo tariff, exact',
    against: 'demo tariff, naive decimal.js',
    goal: 200,
    isFaster: true,
  },
  {
    name: 'spreadsheet, load changed / plain bill',
    ours: 'plain tariff, exact',
    against: 'spreadsheet, load changed',
    goal: 150,
    isFaster: true,
  },
  {
    name: 'spreadsheet, all units changed / plain bill',
    ours: 'plain tariff, exact',
    against: 'spreadsheet, all units changed',
    goal: 150,
    isFaster: true,
  },
  {
    name: 'repricing / demo bill',
    ours: 'repricing the demo tariff',
    against: 'demo tariff, exact',
    goal: 3,
    isFaster: false,
  },
];

function rowOf(pairing: Pairing, timings: Timings): BenchRow {
  const ours = timings.get(pairing.ours) ?? NaN;
  const against = timings.get(pairing.against) ?? NaN;
  const ratio = pairing.isFaster ? against / ours : ours / against;
  const met = pairing.isFaster ? ratio >= pairing.goal : ratio <= pairing.goal;
  const goal = `${pairing.isFaster ? '≥' : '≤'} ${String(pairing.goal)}`;
  return { name: pairing.name, ours, against, ratio, goal, met };
}

const TWIN_BILLS = 1_000_000;

/** Differences from the decimal twin: not a time, but the first goal of all. */
function twinRow(bills: number): BenchRow {
  const found = compareWithTwin(bills, 100, 42);
  const differences = found.differences.length;
  return {
    name: `differences in ${String(found.bills)} bills from the decimal twin`,
    ours: differences,
    against: found.bills,
    ratio: differences,
    goal: '= 0',
    met: differences === 0,
  };
}

const FRAME_NS = 1e9 / 60;
const GZIP_GOAL = 60_000;

function pageRows(report: PageReport | null): readonly BenchRow[] {
  if (report === null) return [];
  const { work, painted } = report.keystrokes;
  const { slider } = report;
  return [
    limitRow('keystroke to painted bill, median / 60 Hz frame', painted.median * 1e6, FRAME_NS),
    limitRow('work of a keystroke, median / 60 Hz frame', work.median * 1e6, FRAME_NS),
    limitRow('work of a keystroke, 95th percentile / 60 Hz frame', work.percentile95 * 1e6, FRAME_NS),
    limitRow(
      'slider to the frame with its answer, 95th percentile / 60 Hz frame',
      slider.frame.percentile95 * 1e6,
      FRAME_NS,
    ),
    limitRow(
      'slider of the quote to painted answer, median / 60 Hz frame',
      slider.painted.median * 1e6,
      FRAME_NS,
    ),
    limitRow(
      'slider to painted answer, 95th percentile / 60 Hz frame',
      slider.painted.percentile95 * 1e6,
      FRAME_NS,
    ),
    limitRow(
      'work of a move of the slider, 95th percentile / 60 Hz frame',
      slider.work.percentile95 * 1e6,
      FRAME_NS,
    ),
    limitRow('JavaScript of the form, gzip bytes / 60 kB (bytes, not ns)', report.gzipBytes, GZIP_GOAL),
  ];
}

const INTERVAL_GOAL = 3;
const COLUMNS_NS = 1e6;
const ROWS_NS = 5e6;
const MEMORY_BYTES = 64 * 2 ** 20;

/** A year of quarter hours, three channels, to twelve bills by time block. */
function intervalRows({ bills, columns, bytesBeyondData }: IntervalReport): readonly BenchRow[] {
  const { columns: typed, rows } = bills;
  return [
    ratioRow('interval year to 12 bills, columns / float', typed.exact, typed.float, INTERVAL_GOAL),
    ratioRow('interval year to 12 bills, row objects / float', rows.exact, rows.float, INTERVAL_GOAL),
    ratioRow('interval year, sums alone, columns / float', columns.exact, columns.float, INTERVAL_GOAL),
    limitRow('interval year to 12 bills, columns / 1 ms (here)', typed.exact, COLUMNS_NS),
    limitRow('interval year to 12 bills, row objects / 5 ms (here)', rows.exact, ROWS_NS),
    limitRow('interval year, bytes beyond the data / 64 MB (bytes)', bytesBeyondData, MEMORY_BYTES),
  ];
}

/** A million intervals a second. */
const INTERVAL_NS = 1000;
/** At most so many times what splitting the same text takes. */
const SPLITTING_GOAL = 2;

/** A file has to be read at a million intervals a second, or at half the speed of the bare parser: the lower. */
function meterRow({ name, ours, splitting }: MeterSpeed): BenchRow {
  const row = ratioRow(
    `an interval of a ${name} file / bare parser splitting it`,
    ours,
    splitting,
    SPLITTING_GOAL,
  );
  return { ...row, goal: '≤ 2, or 1,000 ns', met: row.met || ours <= INTERVAL_NS };
}

const SCHEME_GOAL = 10;

/** A year of bills under the example tariffs: the slowest beside its float loop, and the middle one. */
function schemeRows({ examples }: SchemeReport): readonly BenchRow[] {
  const [worst] = examples;
  const middle = examples[examples.length >> 1];
  const row = (what: string, { name, amounts, float }: ExampleSpeed): BenchRow =>
    ratioRow(`year of bills, ${what}: ${name}`, amounts, float, SCHEME_GOAL);
  return [
    ...(worst === undefined ? [] : [row('worst', worst)]),
    ...(middle === undefined ? [] : [row('median', middle)]),
  ];
}

const QUOTE_GOAL = 3;
const SHEET_GOAL = 300;
const QUOTE_NS = { bills: 2e5, sizes: 5e6, draws: 1.5e8 } as const;

/** A quote of 25 years: its bills beside floats, and one input changed beside a spreadsheet. */
function quoteRows({
  bills,
  float,
  whole,
  sizes,
  draws,
  againRise,
  againShare,
  sheetRise,
  sheetShare,
}: QuoteReport): readonly BenchRow[] {
  return [
    ratioRow('600 bills of a quote / float loop', bills, float, QUOTE_GOAL),
    limitRow('600 bills of a quote / 0.2 ms (here)', bills, QUOTE_NS.bills),
    limitRow('40 sizes of a quote / 5 ms (here)', sizes, QUOTE_NS.sizes),
    limitRow('1,000 draws of a quote / 150 ms (here)', draws, QUOTE_NS.draws),
    timesRow('spreadsheet, rise changed / 600 bills', bills, sheetRise, SHEET_GOAL),
    timesRow('spreadsheet, own use changed / 600 bills', bills, sheetShare, SHEET_GOAL),
    timesRow('spreadsheet, rise changed / quote prepared again', againRise, sheetRise, SHEET_GOAL),
    timesRow('spreadsheet, own use changed / quote prepared again', againShare, sheetShare, SHEET_GOAL),
    limitRow('a whole quote, bills and measures / 60 Hz frame', whole, FRAME_NS),
  ];
}

const ONE_BILL_NS = 5e7;
const PARSING_GOAL = 2;
const ROWS_A_SECOND = { right: 300_000, someWrong: 50_000 } as const;

/** Printed bills: one that is wrong, with every cause; and tables, beside the bare reading of their rows. */
function checkRows({ explained, unexplained }: CheckSpeed, { parsed, right, someWrong }: BatchSpeed) {
  return [
    limitRow('a wrong bill with two causes / 50 ms (here)', explained, ONE_BILL_NS),
    limitRow('a wrong bill that nothing explains / 50 ms (here)', unexplained, ONE_BILL_NS),
    ratioRow('a right row of a table checked / its cells parsed alone', right, parsed, PARSING_GOAL),
    limitRow('a right row of a table / 300,000 a second and core', right, 1e9 / ROWS_A_SECOND.right),
    limitRow('a row, 2 in 100 wrong / 50,000 a second and core', someWrong, 1e9 / ROWS_A_SECOND.someWrong),
  ];
}

/** What has no goal: bills with every figure, and how far floats are right. */
function printSchemes({ examples, left, bills, floatWrong }: SchemeReport): void {
  const within = examples.filter(({ ratio }) => ratio <= SCHEME_GOAL).length;
  const traced = examples.map(({ tracedRatio }) => tracedRatio).sort((a, b) => a - b);
  console.log(
    `Of ${String(examples.length)} example tariffs ${String(within)} are within ${String(SCHEME_GOAL)} × their float loop;`,
    `of ${String(bills)} bills by float loops ${String(floatWrong)} are more than a cent off.`,
  );
  console.log(
    `The same with every figure: ${column(traced[traced.length >> 1] ?? NaN, 0).trim()} × in the middle,`,
    `${column(traced.at(-1) ?? NaN, 0).trim()} × at worst.`,
  );
  for (const one of left) console.log(`Without a float loop: ${one}.`);
}

const column = (value: number, digits: number): string => value.toFixed(digits).padStart(12);

function print(rows: readonly BenchRow[]): void {
  const { bills, floatWrong } = checkSameBills();
  console.log(`Float loops get a line wrong in ${((floatWrong / bills) * 100).toFixed(1)} % of these bills.`);
  console.log(
    `${''.padEnd(72)}${'ours, ns'.padStart(12)}${'against, ns'.padStart(12)}${'ratio'.padStart(12)}  goal`,
  );
  for (const { name, ours, against, ratio, goal, met } of rows) {
    console.log(
      `${name.padEnd(72)}${column(ours, 0)}${column(against, 0)}${column(ratio, 2)}  ${goal}  ${met ? 'met' : 'NOT MET'}`,
    );
  }
}

const isJson = process.argv.includes('--json');
const timings = measure(allSubjects());
const timed = PAIRINGS.map((pairing) => rowOf(pairing, timings));
const page = pageRows(await measurePage());
const schemes = measureSchemes();
const intervals = intervalRows(measureIntervalSpeed());
const rows = [
  ...timed,
  ...schemeRows(schemes),
  ...intervals,
  ...quoteRows(measureQuote()),
  ...checkRows(measureCheck(), measureBatchSpeed()),
  ...measureMeterFiles().map(meterRow),
  ...page,
  twinRow(process.argv.includes('--short') ? TWIN_BILLS / 50 : TWIN_BILLS),
];
if (isJson) console.log(JSON.stringify({ rows }));
else {
  print(rows);
  printSchemes(schemes);
}
if (page.length === 0) console.error('No Chromium found: the page was not measured. npm test installs it.');
