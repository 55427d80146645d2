import type { DiaryDeed } from './plant-document.ts';

/** How often a task is due. */
export type UpkeepPeriod = { readonly days: number } | { readonly months: number };

/** A task of upkeep that comes again and again. */
export interface UpkeepTask {
  /** What the diary calls it. */
  readonly id: DiaryDeed;
  readonly label: string;
  readonly how: string;
  readonly every: UpkeepPeriod;
  /** The same near the sea. */
  readonly everyOnCoast: UpkeepPeriod;
  readonly isForLicensed: boolean;
  /** What it rests on. */
  readonly source: string;
}

const COMMON = 'common practice';

/** The tasks of upkeep, as installers commonly name them. */
export const UPKEEP_TASKS: readonly UpkeepTask[] = [
  {
    id: 'cleaning',
    label: 'Clean the modules',
    how:
      'Early in the morning or late in the day, on cool modules, never in full sun. Plain water and a soft ' +
      'microfibre cloth; no harsh detergent, nothing that scratches. From where you stand safely, never on the ' +
      'modules.',
    every: { days: 15 },
    everyOnCoast: { days: 15 },
    isForLicensed: false,
    source: `${COMMON}: at least twice a month`,
  },
  {
    id: 'structure',
    label: 'Look over structure and fasteners',
    how: 'From the ground or a safe place: rust, loose clamps, modules that have moved.',
    every: { months: 3 },
    everyOnCoast: { months: 1 },
    isForLicensed: false,
    source: `${COMMON}: once a quarter, closer on the coast; every month there is our own choice`,
  },
  {
    id: 'cables',
    label: 'Look for loose or chafed cables',
    how: 'Look only. Touch no cable or connector; note what hangs, rubs or is gnawed.',
    every: { months: 3 },
    everyOnCoast: { months: 3 },
    isForLicensed: false,
    source: `${COMMON}; every quarter is our own choice`,
  },
  {
    id: 'inverter-area',
    label: 'Keep the area of the inverter clean and dry',
    how: 'Clear its air vents, sweep, keep things and water away. Leave its cover shut.',
    every: { months: 3 },
    everyOnCoast: { months: 3 },
    isForLicensed: false,
    source: `${COMMON}; every quarter is our own choice`,
  },
  {
    id: 'inspection',
    label: 'Have the plant inspected',
    how: 'Earthing, surge protection, isolators and their labels, insulation, tightness of connections.',
    every: { months: 12 },
    everyOnCoast: { months: 12 },
    isForLicensed: true,
    source: `${COMMON}: once a year. IEC 62446-1 and IEC 62446-2 name the tests (from memory)`,
  },
];

/** A caution, and where it comes from. */
export interface UpkeepCaution {
  readonly text: string;
  readonly source: string;
}

const MODULE_MANUALS = "cleaning sections of module makers' manuals, 2019 and later";

/** What can hurt someone, or the plant. Local codes decide; where they are stricter they hold. */
export const UPKEEP_CAUTIONS: readonly UpkeepCaution[] = [
  {
    text:
      'Modules carry dangerous direct current whenever there is light; neither the switch of the inverter nor ' +
      'a power cut makes them dead. Never open a connector, a fuse or a cover: that is for licensed people.',
    source: 'safety sheet for cleaning personnel, read at second hand; common practice',
  },
  {
    text:
      'A roof is work at height: no one alone, not when it is wet or windy, with edge protection or a harness. ' +
      'Without them stay on the ground.',
    source: COMMON,
  },
  {
    text:
      'The meter is sealed. Seals, the service connection and everything before them are for the licensee; to ' +
      'break a seal is an offence in most places.',
    source: COMMON,
  },
  {
    text:
      'Clean only in weak light (below 200 W per m²): early in the morning, with water about as warm as the ' +
      'glass (within 20 °C), not in strong wind or heavy rain. Cold water on hot glass can crack it.',
    source: MODULE_MANUALS,
  },
  {
    text: 'Never step, lean or kneel on modules. No abrasives, acids or alkalis.',
    source: MODULE_MANUALS,
  },
  {
    text: 'Makers differ on water under pressure: follow the manual of your modules; without it use none.',
    source: MODULE_MANUALS,
  },
  {
    text:
      'Do not clean or touch a cracked module or a damaged cable, least of all when it is wet: it can be live. ' +
      'Keep away and call a licensed person.',
    source: 'safety sheet for cleaning personnel',
  },
];
