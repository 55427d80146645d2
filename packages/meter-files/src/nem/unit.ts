/** Decimal places by which a kWh is finer than the unit: 1 Wh is 1 of the third place. */
const ENERGY: Readonly<Record<string, number>> = { kwh: 0, wh: 3, mwh: -3 };

/** Units of the format that are no active energy (from memory). */
const OTHERS: ReadonlySet<string> = new Set([
  ...['varh', 'kvarh', 'mvarh', 'vah', 'kvah', 'mvah'],
  ...['w', 'kw', 'mw', 'var', 'kvar', 'mvar', 'va', 'kva', 'mva'],
  ...['v', 'kv', 'mv', 'a', 'ka', 'ma', 'pf'],
]);

/** What a unit of a file is. */
export interface NemUnit {
  /** `other` is a unit of the format that is no active energy. */
  readonly kind: 'energy' | 'other' | 'unknown';
  /** Decimal places to move the point to the left for kWh; 0 where it is no active energy. */
  readonly shift: number;
}

/**
 * Read a unit; letters large or small are the same.
 *
 * @example
 * readUnit('Wh') //=> {"kind":"energy","shift":3}
 * readUnit('kVArh') //=> {"kind":"other","shift":0}
 */
export function readUnit(text: string): NemUnit {
  const name = text.toLowerCase();
  if (Object.hasOwn(ENERGY, name)) return { kind: 'energy', shift: ENERGY[name] ?? 0 };
  return { kind: OTHERS.has(name) ? 'other' : 'unknown', shift: 0 };
}
