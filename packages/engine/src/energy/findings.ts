import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';

/** Everything that can be said of the energy of a period, by code. */
export const ENERGY_FINDINGS = {
  'energy/export-above-generation': {
    severity: 'question',
    grouped: ['export', 'generation'],
    text: (v) => ({
      found: `${v['export'] ?? ''} units given to the grid and ${v['generation'] ?? ''} made in the same days`,
      expected: 'no more given than made, unless a battery was filled from the grid',
      remedy:
        'Likely reasons: import and export swapped; the generation meter misses a phase or has the wrong ' +
        'multiplying factor; the readings are of different days. What the house used itself cannot be known.',
    }),
  },
  'energy/export-about-generation': {
    severity: 'note',
    grouped: ['export', 'generation'],
    text: (v) => ({
      found: `${v['export'] ?? ''} units given to the grid and ${v['generation'] ?? ''} made in the same days`,
      expected: `a difference within ${v['percent'] ?? ''} %, which two meters of their classes can have`,
      remedy: 'Hardly anything was used in the house directly; how much cannot be known.',
    }),
  },
  'energy/export-from-battery': {
    severity: 'note',
    grouped: ['export', 'generation'],
    text: (v) => ({
      found: `${v['export'] ?? ''} units given to the grid and ${v['generation'] ?? ''} made in the same days`,
      expected: 'no more given than made, but for what a battery took before',
      remedy: 'A battery can give units that it took earlier. What the house used itself is not worked out.',
    }),
  },
  'energy/generation-at-least': {
    severity: 'note',
    grouped: ['units'],
    text: (v) => ({
      found: `${v['units'] ?? ''} units made since the generation counter began anew`,
      expected: 'all that the plant made in the period',
      remedy: 'At least so much was made. What the house used itself is not worked out.',
    }),
  },
  'energy/rate-without-block': {
    severity: 'error',
    text: (v) => ({
      found:
        (v['block'] ?? '') === ''
          ? `${v['register'] ?? ''}, without the time block that it stands for`
          : `${v['register'] ?? ''} for the time block "${v['block'] ?? ''}", which the tariff does not have`,
      expected: `one of the time blocks of the tariff: ${v['blocks'] ?? ''}`,
      remedy:
        'Say in the account which block each rate counts. Rate 1 is not peak everywhere: ask the utility.',
    }),
  },
  'energy/yield-low': {
    severity: 'question',
    text: (v) => ({
      found: `${v['yield'] ?? ''} units per kWp and day`,
      expected: 'at least 0.3, even in a dull month',
      remedy:
        'Check the generation reading and the plant capacity. A low month is a finding, not a diagnosis: ' +
        'outage, shade, dirt or a meter error come before faulty panels. Do not open anything: the DC side ' +
        'is live in daylight. Keep it if it is right.',
    }),
  },
  'energy/self-consumption-unknown': {
    severity: 'note',
    text: () => ({
      found: 'no generation meter',
      expected: 'one, to know what the house used straight from the roof',
      remedy: 'The bill does not need it. What solar saved cannot be said without it.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about energy. */
export type EnergyFindingCode = keyof typeof ENERGY_FINDINGS;

/** Make a finding about the energy of a period. */
export const energyFinding: (
  code: EnergyFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<EnergyFindingCode>(ENERGY_FINDINGS);
