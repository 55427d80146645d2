import { dayText, parseDay, type Finding } from '../quantity/index.ts';
import type { AccountDocument } from './account-document.ts';
import { readingFinding } from './findings.ts';

type Meters = AccountDocument['meters'];

/** The meters that came later have days, each after the one before. */
function laterFindings(meters: Meters, meter: 'grid' | 'generation'): Finding[] {
  let before: number | null = null;
  return (meters[meter]?.later ?? []).flatMap(({ from }, index): Finding[] => {
    const path = ['meters', meter, 'later', index, 'from'];
    const day = parseDay(from);
    if (day === null)
      return [readingFinding('account/no-such-day', { path }, { value: from, form: 'yyyy-mm-dd' })];
    const earlier = before;
    before = day;
    if (earlier === null || day > earlier) return [];
    const values = { from, before: dayText(earlier as typeof day) };
    return [readingFinding('account/meters-not-in-order', { path }, values)];
  });
}

/** Every rate of a register has a name of its own. */
function rateFindings({ grid }: Meters): Finding[] {
  const shapes = [
    { path: ['meters', 'grid'], meter: grid },
    ...(grid.later ?? []).map((meter, index) => ({ path: ['meters', 'grid', 'later', index], meter })),
  ];
  return shapes.flatMap(({ path, meter }) =>
    (['import', 'export'] as const).flatMap((id) => {
      const rates = meter[id].rates ?? [];
      return rates.flatMap((rate, index) => {
        if (rates.findIndex((other) => other.id === rate.id) === index) return [];
        const at = [...path, id, 'rates', index, 'id'];
        return [readingFinding('account/rate-twice', { path: at }, { rate: rate.id })];
      });
    }),
  );
}

/** Findings about meters that were changed and registers of several rates. */
export function meterFindings({ meters }: AccountDocument): readonly Finding[] {
  return [...laterFindings(meters, 'grid'), ...laterFindings(meters, 'generation'), ...rateFindings(meters)];
}
