import { answerStyles } from './answer.ts';
import { billStyles } from './bill.ts';
import { changeStyles } from './change.ts';
import { derivationStyles } from './derivation.ts';
import { entryStyles } from './entry.ts';
import { findingStyles } from './findings.ts';
import { meterStyles } from './meters.ts';
import { pageStyles } from './page.ts';
import { paperStyles } from './paper.ts';
import { passbookStyles } from './passbook.ts';
import { printStyles } from './print.ts';
import { shelfStyles } from './shelf.ts';

/** Everything that the elements are set in, the print rules last. */
export const bookStyles: string = [
  paperStyles,
  shelfStyles,
  pageStyles,
  entryStyles,
  meterStyles,
  changeStyles,
  findingStyles,
  answerStyles,
  billStyles,
  derivationStyles,
  passbookStyles,
  printStyles,
].join('');
