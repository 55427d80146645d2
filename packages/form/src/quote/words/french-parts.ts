import type { AssumptionWords } from './assumption-words.ts';
import { wordFor } from './counted.ts';
import type { PaperCases, PaperChart } from './quote-words.ts';

/** What the figures hang on, in French. */
export const FRENCH_ASSUMPTIONS: AssumptionWords = {
  tariff: 'Tarif',
  rise: 'Hausse des prix',
  ownUse: 'Autoconsommation',
  wear: 'Vieillissement',
  upkeep: 'Entretien',
  discount: 'Taux d’actualisation',
  life: 'Durée de vie',
  use: 'Consommation',
  subsidy: 'Subvention',
  notAtAll: 'aucune',
  unknownUse: 'inconnue\u00a0: aucune',
  counted: 'comptée comme accordée',
  none: 'aucune',
  apart: '\u202f; ',
  surplus: 'Prix du surplus',
  byIntervals: 'd’après les courbes de charge',
  growing: (percent) => `+${percent}\u202f% par an`,
  rises: (percent, charges) => `${percent}\u202f% par an (${charges})`,
  wears: (first, later) =>
    first === later ? `${first}\u202f% par an` : `${first}\u202f% la 2e année, puis ${later}\u202f% par an`,
  maintenance: (money, growth) => `${money} par an, +${growth}\u202f% chaque année`,
  replaced: (item, year, money) => `${item}, année ${year}\u00a0: ${money}`,
  years: (years) => `${years} ${wordFor('fr', Number(years), ['an', 'ans'])}`,
  used: (growth) => `comme sur les douze mois indiqués${growth === '' ? '' : `, +${growth}\u202f% par an`}`,
};

/** The chart of the printed quote in French. */
export const FRENCH_CHART: PaperChart = {
  title: 'Dépensé et économisé, par année',
  says: (first, last, years) =>
    `La ligne part de ${first} et arrive à ${last} au bout de ${years}. Une estimation, pas une promesse.`,
  across: 'années depuis l’achat',
  payback: (years) => `temps de retour\u00a0: ${years}`,
  band: 'Ligne à points\u00a0: selon le devis. Hachures\u00a0: P10 à P90, huit cas sur dix. Tirets\u00a0: P50, la moitié des cas finit au-dessus.',
};

/** The cases of the printed quote in French. */
export const FRENCH_CASES: PaperCases = {
  names: {
    'rise-0': () => 'Les prix ne montent pas',
    'rise-twice': (percent) => `Les prix montent de ${percent}\u202f% par an`,
    'generation-less': (percent) => `${percent}\u202f% de production en moins`,
    'use-less': (percent) => `${percent}\u202f% de consommation en moins`,
    'use-more': (percent) => `${percent}\u202f% de consommation en plus`,
    degradation: (percent) => `Vieillissement de ${percent}\u202f% par an`,
    'subsidy-refused': () => 'Subvention non reçue',
    'surplus-unpaid': () => 'Surplus non payé',
    'all-bad': () => 'Tout le défavorable à la fois',
  },
  already: (name) => `${name}\u00a0: dès la première année`,
  notBilled: 'facture impossible à établir',
  noReturn: 'aucun',
  several: (rates) => `plusieurs\u00a0: ${rates}`,
  ofSeveral:
    'De plusieurs rendements, aucun ne dit si l’achat est rentable\u202f; la valeur actuelle nette le dit.',
};
