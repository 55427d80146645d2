import type { MeterFileKind } from '@unitbook/meter-files';

/** What the kinds of meter files are called. */
export const KIND_WORDS: Readonly<Record<MeterFileKind, string>> = {
  nem12: 'NEM12, interval values',
  nem13: 'NEM13, readings of registers',
  espi: 'ESPI, XML of NAESB REQ.21',
  telegram: 'telegrams of a meter',
  'register-list': 'a list of OBIS codes or names of a display',
  'own-register-list': 'a list of readings',
  table: 'a table',
};
