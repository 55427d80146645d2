import type { CheckDesk } from '../check-desk.ts';

/** What is looked at of the page: whose bills they are, and what they are set beside. */
type Ground = Pick<CheckDesk, 'store' | 'tariff' | 'isDemoBook'>;

/**
 * What has to be said where own bills are set beside something invented: what is right there is not right for them.
 * What came with a file is what its writer meant.
 *
 * @returns  '' where nothing of it is invented
 */
export function inventedWords({ store, tariff, isDemoBook }: Ground): string {
  if (store.slot !== 'own' || store.check.ground !== null) return '';
  if (isDemoBook)
    return 'Set beside the invented household of the demo, which lies open in the book. Type your own account, readings and tariff there first.';
  return tariff.kind === 'open' && tariff.tariff.tariff.document.invented === true
    ? 'Set beside the tariff of an invented place. Open the file of your own tariff in the book first.'
    : '';
}
