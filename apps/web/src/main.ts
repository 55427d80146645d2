import '@unitbook/form/define';
import { keepIn, keepLayoutsIn, readHousehold, type Household, type TariffChoice } from '@unitbook/form';
import quoteAddress from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?url';
import checkAddress from '../../../tariffs-examples/checks/two-bills.json?url';
import disputeAddress from '../../../tariffs-examples/disputes/tarumira.json?url';
import demoAddress from '../../../tariffs-examples/households/demo.json?url';
import { allowWorkers } from './allow-workers.ts';
import { keepOffline } from './keep-offline.ts';

// Two of the examples: every other would weigh on the page, and can be opened from its file.
const ids = import.meta.glob<string>(
  '../../../tariffs-examples/tarumira/{taresco-domestic,taresco-shop}/tariff.json',
  { eager: true, import: 'id' },
);
const names = import.meta.glob<string>(
  '../../../tariffs-examples/tarumira/{taresco-domestic,taresco-shop}/tariff.json',
  { eager: true, import: 'name' },
);
const addresses = import.meta.glob<string>(
  '../../../tariffs-examples/tarumira/{taresco-domestic,taresco-shop}/tariff.json',
  { eager: true, query: '?url', import: 'default' },
);

/** A text that comes with the page; the offline worker keeps it like every other file. */
async function fetchText(address: string): Promise<string> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${response.status} ${response.statusText}`);
  return response.text();
}

const tariffs = Object.entries(addresses).map(([path, address]): TariffChoice => {
  const id = ids[path] ?? path;
  return { id, name: names[path] ?? id, load: () => fetchText(address) };
});

/** The day on the reader's calendar; the engine has no clock of its own. */
function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${String(now.getFullYear())}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The invented household; without it the page opens all the same, with a book of one's own. */
async function demo(): Promise<Household | null> {
  const read = readHousehold(await fetchText(demoAddress).catch(() => ''));
  return read.kind === 'household' ? read.household : null;
}

const book = document.createElement('unitbook-book');
book.tariffs = tariffs;
book.today = today();
book.demo = await demo();
book.demoQuote = () => fetchText(quoteAddress);
book.demoCheck = () => fetchText(checkAddress);
book.demoDispute = () => fetchText(disputeAddress);
book.layouts = keepLayoutsIn(() => window.localStorage);
book.keep = keepIn(() => window.localStorage);
document.querySelector('main')?.append(book);

if (import.meta.env.PROD) {
  allowWorkers();
  keepOffline();
}
