import { csvText } from '../../plant/csv.ts';
import { quoteFindingText } from '../view/quote-finding-text.ts';
import type { FlyerView } from './flyer-view.ts';

/** The lines of a flyer beside the quote as the text of a CSV file, numbers as exact decimals. */
export function flyerCsv({ lines, writing }: FlyerView): string {
  return csvText(
    ['Line', 'The flyer says', 'This quote says', 'The flyer says more by', 'To ask'],
    lines.map(({ label, exact, asks }) => [
      label,
      ...exact,
      asks.map((finding) => quoteFindingText(finding, writing)).join(' '),
    ]),
  );
}
