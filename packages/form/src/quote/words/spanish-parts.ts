import type { AssumptionWords } from './assumption-words.ts';
import { wordFor } from './counted.ts';
import type { PaperCases, PaperChart } from './quote-words.ts';

/** What the figures hang on, in Spanish. */
export const SPANISH_ASSUMPTIONS: AssumptionWords = {
  tariff: 'Tarifa',
  rise: 'Subida de precios',
  ownUse: 'Autoconsumo',
  wear: 'Desgaste',
  upkeep: 'Mantenimiento',
  discount: 'Tasa de descuento',
  life: 'Vida útil',
  use: 'Consumo',
  subsidy: 'Subvención',
  notAtAll: 'ninguna',
  unknownUse: 'no se sabe: nada',
  counted: 'contada como concedida',
  none: 'ninguna',
  apart: '; ',
  surplus: 'Precio del excedente',
  byIntervals: 'según las curvas de consumo',
  growing: (percent) => `+${percent}\u00a0% al año`,
  rises: (percent, charges) => `${percent}\u00a0% al año (${charges})`,
  wears: (first, later) =>
    first === later ? `${first}\u00a0% al año` : `${first}\u00a0% el 2.º año, después ${later}\u00a0% al año`,
  maintenance: (money, growth) => `${money} al año, +${growth}\u00a0% cada año`,
  replaced: (item, year, money) => `${item} en el año ${year} por ${money}`,
  years: (years) => `${years} ${wordFor('es', Number(years), ['año', 'años'])}`,
  used: (growth) => `como en los doce meses indicados${growth === '' ? '' : `, +${growth}\u00a0% al año`}`,
};

/** The chart of the printed quote in Spanish. */
export const SPANISH_CHART: PaperChart = {
  title: 'Gastado y ahorrado, por año',
  says: (first, last, years) =>
    `La línea empieza en ${first} y termina en ${last} al cabo de ${years}. Una estimación, no una promesa.`,
  across: 'años desde la compra',
  payback: (years) => `recuperación: ${years}`,
  band: 'Línea con puntos: según el presupuesto. Rayado: P10 a P90, ocho casos de diez. A trazos: P50, la mitad de los casos acaba por encima.',
};

/** The cases of the printed quote in Spanish. */
export const SPANISH_CASES: PaperCases = {
  names: {
    'rise-0': () => 'Los precios no suben',
    'rise-twice': (percent) => `Los precios suben un ${percent}\u00a0% al año`,
    'generation-less': (percent) => `Un ${percent}\u00a0% menos de producción`,
    'use-less': (percent) => `Un ${percent}\u00a0% menos de consumo`,
    'use-more': (percent) => `Un ${percent}\u00a0% más de consumo`,
    degradation: (percent) => `Desgaste del ${percent}\u00a0% al año`,
    'subsidy-refused': () => 'Subvención no recibida',
    'surplus-unpaid': () => 'Excedente no pagado',
    'all-bad': () => 'Todo lo desfavorable a la vez',
  },
  already: (name) => `${name}: ya desde el año 1`,
  notBilled: 'no se puede facturar',
  noReturn: 'ninguna',
  several: (rates) => `varias: ${rates}`,
  ofSeveral: 'De varias rentabilidades ninguna dice si compensa; lo dice el valor actual neto.',
};
