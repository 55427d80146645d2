import type { AssumptionWords } from './assumption-words.ts';
import { wordFor } from './counted.ts';
import type { PaperCases, PaperChart } from './quote-words.ts';

/** What the figures hang on, in German. */
export const GERMAN_ASSUMPTIONS: AssumptionWords = {
  tariff: 'Tarif',
  rise: 'Preisanstieg',
  ownUse: 'Eigenverbrauch',
  wear: 'Alterung',
  upkeep: 'Wartung',
  discount: 'Abzinsung',
  life: 'Lebensdauer',
  use: 'Verbrauch',
  subsidy: 'Zuschuss',
  notAtAll: 'keiner',
  unknownUse: 'nicht bekannt: keiner',
  counted: 'als bewilligt eingerechnet',
  none: 'keiner',
  apart: '; ',
  surplus: 'Vergütung für Überschuss',
  byIntervals: 'nach Lastgängen',
  growing: (percent) => `+${percent}\u00a0% pro Jahr`,
  rises: (percent, charges) => `${percent}\u00a0% pro Jahr (${charges})`,
  wears: (first, later) =>
    first === later
      ? `${first}\u00a0% pro Jahr`
      : `${first}\u00a0% im 2. Jahr, danach ${later}\u00a0% pro Jahr`,
  maintenance: (money, growth) => `${money} pro Jahr, jedes Jahr +${growth}\u00a0%`,
  replaced: (item, year, money) => `${item} im ${year}. Jahr für ${money}`,
  years: (years) => `${years} ${wordFor('de', Number(years), ['Jahr', 'Jahre'])}`,
  used: (growth) =>
    `wie in den angegebenen zwölf Monaten${growth === '' ? '' : `, +${growth}\u00a0% pro Jahr`}`,
};

/** The chart of the printed quote in German. */
export const GERMAN_CHART: PaperChart = {
  title: 'Ausgegeben und gespart, Jahr für Jahr',
  says: (first, last, years) =>
    `Die Linie beginnt bei ${first} und endet bei ${last}; gezeichnet sind ${years}. Eine Schätzung, kein Versprechen.`,
  across: 'Jahre seit dem Kauf',
  payback: (years) => `Amortisation: ${years}`,
  band: 'Linie mit Punkten: wie angeboten. Schraffiert: P10 bis P90, acht von zehn Fällen. Gestrichelt: P50, die Hälfte aller Fälle endet darüber.',
};

/** The cases of the printed quote in German. */
export const GERMAN_CASES: PaperCases = {
  names: {
    'rise-0': () => 'Preise steigen nicht',
    'rise-twice': (percent) => `Preise steigen um ${percent}\u00a0% pro Jahr`,
    'generation-less': (percent) => `${percent}\u00a0% weniger Erzeugung`,
    'use-less': (percent) => `${percent}\u00a0% weniger Verbrauch`,
    'use-more': (percent) => `${percent}\u00a0% mehr Verbrauch`,
    degradation: (percent) => `Alterung von ${percent}\u00a0% pro Jahr`,
    'subsidy-refused': () => 'Zuschuss nicht erhalten',
    'surplus-unpaid': () => 'Überschuss nicht bezahlt',
    'all-bad': () => 'Alles Ungünstige zusammen',
  },
  already: (name) => `${name}: schon ab dem 1. Jahr`,
  notBilled: 'nicht abrechenbar',
  noReturn: 'keine',
  several: (rates) => `mehrere: ${rates}`,
  ofSeveral: 'Von mehreren Renditen sagt keine, ob es sich lohnt; der Kapitalwert sagt es.',
};
