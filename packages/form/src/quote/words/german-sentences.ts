import { wordFor, type Counted } from './counted.ts';
import type { PaperSentences } from './quote-words.ts';

const monthsOf = ({ text, count }: Counted): string => `${text} ${wordFor('de', count, ['Monat', 'Monate'])}`;

/** Sentences of the printed quote in German. */
export const GERMAN_SENTENCES: PaperSentences = {
  notSaid: 'nicht angegeben',
  noLoan: 'Kein Kredit: Der Preis wird aus eigenen Mitteln bezahlt.',
  noSubsidy: 'Es ist kein Zuschuss eingerechnet.',
  noSurplus: 'Im ersten Jahr wird kein Überschuss ausgezahlt.',
  noPromise:
    'Der Verkäufer hat keine Garantie schriftlich zugesagt. Verlangen Sie eine, bevor Sie unterschreiben.',
  surplus: (units, money) => `Im ersten Jahr eingespeist: ${units} kWh; für Überschuss ausgezahlt: ${money}.`,
  aboveUse: (percent) =>
    `Die Anlage erzeugt ${percent}\u00a0% dessen, was im ersten Jahr verbraucht wird. Was darüber hinausgeht, bringt nur die Vergütung für Überschuss.`,
  inForce: (order, since) => `${order}; in Kraft seit ${since}`,
  everyBill: 'mit jeder Rechnung',
  inBill: { same: 'mit derselben Rechnung bezahlt', next: 'mit der nächsten Rechnung bezahlt' },
  noSurplusRate: 'nichts, oder kein fester Preis',
  arrangements: {
    units: 'mit dem Bezug verrechnet',
    paid: 'je Kilowattstunde bezahlt',
    money: 'in Geld gutgeschrieben',
    none: 'nichts wird auf die nächste Rechnung übertragen',
  },
  ofUpkeep: { included: 'in der Wartung enthalten', 'not-included': 'nicht in der Wartung enthalten' },
  withoutSubsidy: (payback) => `Amortisation, falls er abgelehnt wird: ${payback}`,
  ownUse: (share) => `Es wird damit gerechnet, dass ${share}\u00a0% der Erzeugung im Haus verbraucht werden.`,
  ownUseUnknown: 'Nicht bekannt; es ist kein Eigenverbrauch eingerechnet.',
  ownUseByIntervals: (share) =>
    `Im ersten Jahr werden ${share}\u00a0% der Erzeugung im Haus verbraucht, nach den Lastgängen von Verbrauch und Erzeugung.`,
  perKilowatt: (units) => `${units} kWh je kWp`,
  lowCase: (mean, year, sigma) =>
    `${mean} kWh im Mittel der Jahre${year === '' ? '' : `, ${year} kWh in einem einzelnen`} (P90: in neun von zehn Fällen mehr; eine Standardabweichung ${sigma})`,
  wear: (first, later) => `im zweiten Jahr ${first}\u00a0% weniger, danach jedes Jahr ${later}\u00a0%`,
  stays: (least, most) =>
    `Im ersten Jahr bleiben Rechnungen von ${least} bis ${most}: Grundpreis, Mindestbetrag, Steuern und der weiterhin gekaufte Strom. Keine Rechnung sinkt auf null.`,
  subsidyLater: (months, to) =>
    `Er wird, falls bewilligt, ${months.count === 0 ? 'zum Start' : `${monthsOf(months)} nach dem Start`} an ${to} ausgezahlt; bis dahin ist der ganze Preis aufzubringen.`,
  batteryAlone: (saving, payback) =>
    `Sein eigener Anteil an der Ersparnis im ersten Jahr: ${saving}; Amortisation allein dadurch: ${payback}`,
  interestTotal: (interest, paid) => `${interest}; alle Raten zusammen ${paid}`,
  instalments: monthsOf,
  drawn: (range, count) => `${range} (P50 bis P90 aus ${count} Zufallsläufen)`,
  payback:
    'Amortisation: wenn die Summe der jährlichen Ersparnisse, abzüglich Wartung und Ersatz, den Preis abzüglich Zuschuss erreicht. Abgezinst: dasselbe, das Geld jedes Jahres mit seinem heutigen Wert gerechnet.',
  filled: '* Verbrauch nach einer Regel ergänzt, weil die Rechnung fehlt.',
  tried: (size, offered) =>
    `Probe, kein Angebot: eine Anlage mit ${size} kWp, nach der Leistung umgerechnet, anstelle der angebotenen ${offered} kWp.`,
  warnings: [
    'Dies ist eine Schätzung, keine Garantie. Wetter, Verbrauch und Preise können sich anders entwickeln.',
    'Tarif und Regeln können sich ändern, auch für Anlagen, die schon laufen; die Fälle oben zeigen, was das bedeuten kann.',
    'Die Monatsrechnungen schwanken, und keine Rechnung sinkt auf null.',
    'Was die Anzeige des Wechselrichters oder eine App zählt, ist nicht, was die Zähler zählen: Abgerechnet wird nach den Zählern.',
    'Arbeit auf dem Dach ist Arbeit in der Höhe. Die Gleichstromseite steht unter Spannung, sobald es hell ist. Zähler sind verplombt; Zähler und Verteiler sind Sache zugelassener Fachleute.',
    'Dies ist keine Rechts- oder Steuerberatung.',
  ],
  promise: [
    'Lesen Sie am Tag der Rechnung am Netzzähler Bezug und Einspeisung ab und dazu den Stand des Erzeugungszählers; die drei Zahlen erklären jede Rechnung.',
    'Die erste Rechnung umfasst Tage vor und nach dem Start; sie wird deshalb keinem der Monate oben gleichen.',
  ],
  signature:
    'Ich habe dieses Angebot erhalten und verstanden, wovon es ausgeht: vom Verbrauch, von der Erzeugung, vom Anstieg der Preise und davon, dass die Rechnungen schwanken.',
  years: ({ text, count }) => `${text} ${wordFor('de', count, ['Jahr', 'Jahre'], 1)}`,
  never: 'nicht während der Lebensdauer',
  atFirst: (years) => `zunächst ${years}`,
  forGood: (years) => `endgültig: ${years}`,
  owedAtEnd: 'am Ende wieder offen',
  customer: 'den Kunden',
  sellerWord: 'den Verkäufer',
};
