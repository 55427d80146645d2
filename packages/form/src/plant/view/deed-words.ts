import type { DiaryDeed } from '@unitbook/engine';

const WORDS: Readonly<Partial<Record<string, string>> & Record<DiaryDeed, string>> = {
  cleaning: 'Cleaned',
  structure: 'Structure and fasteners looked at',
  cables: 'Cables looked at',
  'inverter-area': 'Inverter area looked at',
  inspection: 'Inspection',
  repair: 'Repair',
  outage: 'Outage',
  other: 'Something else',
};

/** What an entry of the diary says, in words; a word of another version as it stands. */
export const deedWords = (did: string): string => WORDS[did] ?? did;
