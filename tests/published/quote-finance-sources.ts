/** Where a reference value was published. */
export interface FinanceSource {
  readonly title: string;
  readonly publisher: string;
  readonly year: string;
  /** How it was come by, where that matters. */
  readonly note?: string;
}

const own: FinanceSource = {
  title: 'own worked example',
  publisher: 'none',
  year: 'n.d.',
  note: 'worked out in decimals apart from the engine',
};

/** The sources of the reference values of finance. A note says where a value is from memory. */
export const SOURCES = {
  own,
  npv: {
    title: 'NPV function, Excel support',
    publisher: 'Microsoft',
    year: 'current',
    note: 'from memory',
  },
  irr: { title: 'IRR function, Excel support', publisher: 'Microsoft', year: 'current' },
  xirr: { title: 'XIRR function, Excel support', publisher: 'Microsoft', year: 'current' },
  xnpv: { title: 'WorksheetFunction.Xnpv', publisher: 'Microsoft Learn', year: '2007-2024' },
  mirr: { title: 'MIRR function, Excel support', publisher: 'Microsoft', year: 'current' },
  pmt: { title: 'PMT function', publisher: 'Microsoft', year: 'current' },
  ppmt: { title: 'PPMT, IPMT functions', publisher: 'Microsoft', year: 'current' },
  ipmt: { title: 'PPMT, IPMT functions', publisher: 'Microsoft', year: 'current', note: 'from memory' },
  cumipmt: { title: 'CUMIPMT function', publisher: 'Microsoft', year: 'current' },
  cumprinc: { title: 'CUMPRINC function', publisher: 'Microsoft', year: 'current', note: 'from memory' },
  effect: { title: 'EFFECT function', publisher: 'Microsoft', year: 'n.d.', note: 'from memory' },
  npmFinancial: { title: 'npm package financial 0.2.4', publisher: 'L. Mammino', year: '2025' },
  numpy: { title: 'numpy-financial / numpy.irr documentation', publisher: 'NumPy', year: '2019' },
  numpyMemory: {
    title: 'numpy-financial / numpy.irr documentation',
    publisher: 'NumPy',
    year: '2019',
    note: 'the results from memory',
  },
  formCalc: { title: 'FormCalc reference, NPV', publisher: 'Adobe LiveCycle 10', year: '2012' },
  spreadNpv: {
    title: 'spreadsheet-component function reference, NPV',
    publisher: 'MESCIUS/GrapeCity',
    year: '2016-18',
  },
  spreadPmt: {
    title: 'spreadsheet-component function reference, PMT',
    publisher: 'MESCIUS',
    year: 'current',
  },
  range: { title: 'RangeXIRR / RangeXNPV', publisher: 'Qlik help', year: '2017' },
  mine: {
    title: 'financial-management textbook extract, strip mine, p. 273',
    publisher: 'issuhub.com (copy)',
    year: 'n.d.',
  },
  exam: {
    title: 'exam-style question on several IRRs',
    publisher: '300hours.com (forum copy)',
    year: 'n.d.',
  },
  fourRates: {
    title: '"Multiple IRRs", end-of-chapter problem of a corporate-finance textbook',
    publisher: 'brainmass.com (copy)',
    year: 'n.d.',
    note: 'the inputs; the roots are those of the polynomial',
  },
  negativeRate: {
    title: 'two-IRR solution',
    publisher: 'answer.ya.guru (copy)',
    year: 'n.d.',
    note: 'secondary',
  },
  noRate: {
    title: 'no-real-IRR example',
    publisher: 'classic textbook example',
    year: 'n.d.',
    note: 'from memory; the discriminant is 9,000,000 − 10,000,000',
  },
  paybackPage: {
    title: 'payback page citing Brealey, Myers, Allen',
    publisher: 'calcdomain.com',
    year: 'n.d.',
    note: 'secondary',
  },
  projectC: {
    title: 'discounted payback of Project C',
    publisher: 'wizedu.com',
    year: 'n.d.',
    note: 'the inputs',
  },
  homework: {
    title: 'CRF / LCOE homework solution',
    publisher: 'indextestingapp.uonbi.ac.ke (copy)',
    year: 'n.d.',
    note: 'secondary',
  },
  instalment: {
    title: 'EMI formula with 5,00,000 at 10 % over 5 years',
    publisher: 'loanemicalcpro.netlify.app',
    year: 'n.d.',
    note: 'the inputs; the results worked out',
  },
  bank: {
    title: 'instalment illustration 10 lakh, 7.2 %, 120 months',
    publisher: 'a bank',
    year: 'n.d.',
    note: 'from memory',
  },
  paybackRule: {
    title: '10 CFR 436.23 Estimated simple payback time',
    publisher: 'US DOE/eCFR',
    year: '1996',
    note: 'the definition; the numbers are our own',
  },
  handbook: {
    title: 'Handbook 135 and annual supplement NISTIR 85-3273',
    publisher: 'NIST',
    year: '1995-2022',
    note: 'from memory',
  },
  manual: {
    title: 'A Manual for the Economic Evaluation of Energy Efficiency and Renewable Energy Technologies',
    publisher: 'Short, Packey, Holt, NREL',
    year: '1995',
    note: 'the formula from memory',
  },
  rooftop: {
    title: 'Performance Analysis of a Rooftop Grid-Connected PV System in NE India, Energies 18(8) 1921',
    publisher: 'MDPI',
    year: '2025',
  },
  review: {
    title: 'Photovoltaic Degradation Rates - an Analytical Review, Prog. PV 21:12-29',
    publisher: 'Jordan & Kurtz, NREL',
    year: '2013',
  },
  compendium: {
    title: 'Compendium of Photovoltaic Degradation Rates',
    publisher: 'Jordan, Kurtz, VanSant, Newmiller',
    year: '2016',
  },
  engineers: { title: 'Photovoltaic module degradation paper', publisher: 'DNV GL', year: 'n.d.' },
  doubts: {
    title: 'Estimating the Uncertainty in Long-Term PV Yield Predictions',
    publisher: 'Thevenard & Pelland, CanmetENERGY',
    year: '2011/13',
  },
  factors: {
    title: 'quantiles of the standard normal distribution',
    publisher: 'tables',
    year: 'n.d.',
    note: 'from memory, and worked out',
  },
} as const satisfies Readonly<Record<string, FinanceSource>>;
