import { wordFor, type Counted } from './counted.ts';
import type { PaperSentences } from './quote-words.ts';

const monthsOf = ({ text }: Counted): string => `${text} mois`;

/** Sentences of the printed quote in French. */
export const FRENCH_SENTENCES: PaperSentences = {
  notSaid: 'non précisé',
  noLoan: 'Pas de prêt\u00a0: le prix est payé comptant.',
  noSubsidy: 'Aucune subvention n’est comptée.',
  noSurplus: 'Aucun surplus n’est payé la première année.',
  noPromise: 'Le vendeur n’a écrit aucune garantie. Demandez-en une avant de signer.',
  surplus: (units, money) =>
    `Injecté la première année\u00a0: ${units} kWh\u202f; payé pour le surplus\u00a0: ${money}.`,
  aboveUse: (percent) =>
    `L’installation produit ${percent}\u202f% de ce qui est consommé la première année. Ce qui dépasse la consommation ne rapporte que le prix du surplus.`,
  inForce: (order, since) => `${order}\u202f; en vigueur depuis le ${since}`,
  everyBill: 'à chaque facture',
  inBill: { same: 'payé avec la même facture', next: 'payé avec la facture suivante' },
  noSurplusRate: 'rien, ou pas de prix unique et fixe',
  arrangements: {
    units: 'déduite de l’électricité soutirée',
    paid: 'payée au kilowattheure',
    money: 'créditée en argent',
    none: 'rien n’est reporté d’une facture à l’autre',
  },
  ofUpkeep: { included: 'compris dans l’entretien', 'not-included': 'non compris dans l’entretien' },
  withoutSubsidy: (payback) => `Temps de retour si elle est refusée\u00a0: ${payback}`,
  ownUse: (share) => `Le calcul suppose que ${share}\u202f% de la production est consommée sur place.`,
  ownUseUnknown: 'Part inconnue\u00a0: rien n’est compté comme consommé sur place.',
  ownUseByIntervals: (share) =>
    `La première année, ${share}\u202f% de la production est consommée sur place, d’après les courbes de charge et de production.`,
  perKilowatt: (units) => `${units} kWh par kWc`,
  lowCase: (mean, year, sigma) =>
    `${mean} kWh en moyenne des années${year === '' ? '' : `, ${year} kWh pour une année isolée`} (P90\u00a0: dépassé neuf fois sur dix\u202f; un écart type ${sigma})`,
  wear: (first, later) => `${first}\u202f% de moins la deuxième année, puis ${later}\u202f% chaque année`,
  stays: (least, most) =>
    `La première année, il reste des factures de ${least} à ${most}\u00a0: abonnement, minimum, taxes et énergie encore achetée. Aucune facture ne tombe à zéro.`,
  subsidyLater: (months, to) =>
    `Si elle est accordée, elle est versée ${to} ${months.count === 0 ? 'dès la mise en service' : `${monthsOf(months)} après la mise en service`}\u202f; d’ici là, le prix entier est à réunir.`,
  batteryAlone: (saving, payback) =>
    `Sa propre part de l’économie de la première année\u00a0: ${saving}\u202f; temps de retour par elle seule\u00a0: ${payback}`,
  interestTotal: (interest, paid) => `${interest}\u202f; total des mensualités ${paid}`,
  instalments: monthsOf,
  drawn: (range, count) => `${range} (P50 à P90 de ${count} tirages)`,
  payback:
    'Temps de retour\u00a0: quand la somme des économies annuelles, moins l’entretien et les remplacements, atteint le prix moins la subvention. Actualisé\u00a0: de même, l’argent de chaque année étant compté à sa valeur actuelle.',
  filled: '* Consommation complétée par une règle, faute de facture.',
  tried: (size, offered) =>
    `Essai, pas une offre\u00a0: une installation de ${size} kWc, au prorata de la puissance, à la place des ${offered} kWc proposés.`,
  warnings: [
    'Ceci est une estimation, pas une garantie. La météo, la consommation et les prix peuvent évoluer autrement.',
    'Le tarif et les règles peuvent changer, même pour les installations déjà en service\u202f; les cas ci-dessus montrent ce que cela peut entraîner.',
    'Les factures mensuelles varieront, et aucune ne tombera à zéro.',
    'Ce que compte l’écran de l’onduleur ou une application n’est pas ce que mesurent les compteurs\u00a0: la facture suit les compteurs.',
    'Travailler sur un toit, c’est travailler en hauteur. Le côté courant continu est sous tension dès qu’il fait jour. Les compteurs sont scellés\u202f; compteurs et tableaux électriques sont réservés aux professionnels habilités.',
    'Ceci n’est pas un conseil juridique ou fiscal.',
  ],
  promise: [
    'Le jour de la facture, relevez le soutirage et l’injection au compteur du réseau, et l’index du compteur de production\u202f; ces trois nombres expliquent chaque facture.',
    'La première facture couvre des jours d’avant et d’après la mise en service\u00a0: elle ne ressemblera à aucun des mois ci-dessus.',
  ],
  signature:
    'J’ai reçu ce devis et compris ce qu’il suppose\u00a0: la consommation, la production, la hausse des prix, et le fait que les factures varieront.',
  years: ({ text, count }) => `${text} ${wordFor('fr', count, ['an', 'ans'], 1)}`,
  never: 'pas pendant la durée de vie',
  atFirst: (years) => `${years} dans un premier temps`,
  forGood: (years) => `${years} pour de bon`,
  owedAtEnd: 'de nouveau dû à la fin',
  customer: 'au client',
  sellerWord: 'au vendeur',
};
