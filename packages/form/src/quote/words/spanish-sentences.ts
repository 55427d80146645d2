import { wordFor, type Counted } from './counted.ts';
import type { PaperSentences } from './quote-words.ts';

const monthsOf = ({ text, count }: Counted): string => `${text} ${wordFor('es', count, ['mes', 'meses'])}`;

/** Sentences of the printed quote in Spanish. */
export const SPANISH_SENTENCES: PaperSentences = {
  notSaid: 'sin indicar',
  noLoan: 'Sin préstamo: el precio se paga al contado.',
  noSubsidy: 'No se cuenta ninguna subvención.',
  noSurplus: 'El primer año no se paga ningún excedente.',
  noPromise: 'El vendedor no ha puesto por escrito ninguna garantía. Pídala antes de firmar.',
  surplus: (units, money) =>
    `Vertido a la red el primer año: ${units} kWh; pagado por los excedentes: ${money}.`,
  aboveUse: (percent) =>
    `La instalación produce el ${percent}\u00a0% de lo que se consume el primer año. Lo que pasa del consumo solo rinde lo que se paga por el excedente.`,
  inForce: (order, since) => `${order}; en vigor desde el ${since}`,
  everyBill: 'con cada factura',
  inBill: { same: 'pagado con la misma factura', next: 'pagado con la factura siguiente' },
  noSurplusRate: 'nada, o ningún precio único y fijo',
  arrangements: {
    units: 'se descuenta de la tomada de la red',
    paid: 'se paga por kilovatio hora',
    money: 'se abona en dinero',
    none: 'nada pasa de una factura a otra',
  },
  ofUpkeep: { included: 'incluido en el mantenimiento', 'not-included': 'no incluido en el mantenimiento' },
  withoutSubsidy: (payback) => `Recuperación si se deniega: ${payback}`,
  ownUse: (share) => `Se calcula que el ${share}\u00a0% de lo producido se consume en casa.`,
  ownUseUnknown: 'No se sabe; no se cuenta nada como consumido en casa.',
  ownUseByIntervals: (share) =>
    `El primer año se consume en casa el ${share}\u00a0% de lo producido, según las curvas de consumo y de producción.`,
  perKilowatt: (units) => `${units} kWh por kWp`,
  lowCase: (mean, year, sigma) =>
    `${mean} kWh de media de los años${year === '' ? '' : `, ${year} kWh en un año suelto`} (P90: se supera en nueve casos de diez; una desviación típica ${sigma})`,
  wear: (first, later) => `un ${first}\u00a0% menos el segundo año, y después un ${later}\u00a0% cada año`,
  stays: (least, most) =>
    `El primer año quedan facturas de ${least} a ${most}: término fijo, mínimo, impuestos y la energía que aún se compra. Ninguna factura se queda en cero.`,
  subsidyLater: (months, to) =>
    `Si se concede, se paga ${to} ${months.count === 0 ? 'al ponerse en marcha la instalación' : `${monthsOf(months)} después de la puesta en marcha`}; hasta entonces hay que reunir el precio completo.`,
  batteryAlone: (saving, payback) =>
    `Su propia parte del ahorro del primer año: ${saving}; recuperación solo con ella: ${payback}`,
  interestTotal: (interest, paid) => `${interest}; todas las cuotas suman ${paid}`,
  instalments: monthsOf,
  drawn: (range, count) => `${range} (P50 a P90 de ${count} simulaciones)`,
  payback:
    'Recuperación: cuando la suma de los ahorros anuales, menos el mantenimiento y las sustituciones, alcanza el precio menos la subvención. Descontado: lo mismo, con el dinero de cada año a su valor actual.',
  filled: '* Consumo completado con una regla, por falta de factura.',
  tried: (size, offered) =>
    `Prueba, no oferta: una instalación de ${size} kWp, en proporción a la potencia, en lugar de los ${offered} kWp ofrecidos.`,
  warnings: [
    'Esto es una estimación, no una garantía. El tiempo, el consumo y los precios pueden resultar distintos.',
    'La tarifa y las normas pueden cambiar, también para instalaciones que ya funcionan; los casos de arriba muestran lo que eso puede suponer.',
    'Las facturas mensuales variarán, y ninguna se quedará en cero.',
    'Lo que cuenta la pantalla del inversor o una aplicación no es lo que cuentan los contadores: la factura va por los contadores.',
    'Trabajar en un tejado es trabajar en altura. El lado de corriente continua tiene tensión siempre que hay luz de día. Los contadores están precintados; los contadores y los cuadros eléctricos son solo para personal autorizado.',
    'Esto no es asesoramiento jurídico ni fiscal.',
  ],
  promise: [
    'El día de la factura, lea en el contador de la red lo consumido y lo vertido, y anote la lectura del contador de generación; los tres números explican cada factura.',
    'La primera factura abarca días de antes y de después de la puesta en marcha, así que no se parecerá a ninguno de los meses de arriba.',
  ],
  signature:
    'He recibido este presupuesto y he entendido lo que supone: el consumo, la producción, la subida de los precios y que las facturas variarán.',
  years: ({ text, count }) => `${text} ${wordFor('es', count, ['año', 'años'], 1)}`,
  never: 'no dentro de la vida útil',
  atFirst: (years) => `${years} en un primer momento`,
  forGood: (years) => `${years} de forma definitiva`,
  owedAtEnd: 'de nuevo pendiente al final',
  customer: 'al cliente',
  sellerWord: 'al vendedor',
};
