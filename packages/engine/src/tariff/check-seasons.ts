import { parseDay, type Finding } from '../quantity/index.ts';
import { tariffFinding } from './findings.ts';
import type { TariffDocument } from './schema.ts';

/** Check the seasons of a document and the charges that name them. */
export function seasonFindings(document: TariffDocument): Finding[] {
  const seasons = Object.entries(document.seasons ?? {});
  const known = seasons.map(([name]) => name);
  const days = seasons.flatMap(([name, season]) =>
    (['from', 'through'] as const)
      .filter((key) => parseDay(`2000-${season[key]}`) === null)
      .map((key) =>
        tariffFinding('tariff/no-such-day', { path: ['seasons', name, key] }, { value: season[key] }),
      ),
  );
  // Days are texts here: a winter through 02-28 would leave the day after it in a leap year to no season.
  const begins = new Set(seasons.map(([, { from }]) => from));
  const leap = seasons
    .filter(([, { through }]) => through === '02-28' && !begins.has('02-29'))
    .map(([name]) => tariffFinding('tariff/season-leap-day', { path: ['seasons', name, 'through'] }));
  const charges = document.versions.flatMap((version, index) =>
    version.charges.flatMap(({ season }, at) => {
      if (season === undefined || known.includes(season)) return [];
      const path = ['versions', index, 'charges', at, 'season'];
      const values = { season, known: known.map((name) => `"${name}"`).join(', ') || 'none' };
      return [tariffFinding('tariff/unknown-season', { path }, values)];
    }),
  );
  return [...days, ...leap, ...charges];
}
