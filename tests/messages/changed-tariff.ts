import { readTariff, type Finding } from '@unitbook/engine';
import { changed, DEMO_TARIFF } from '../support/demo.ts';

/** What is found in the demo tariff once one place of it is changed. */
export const changedTariff = (from: string, to: string) => (): readonly Finding[] =>
  readTariff(changed(DEMO_TARIFF, from, to)).findings;
