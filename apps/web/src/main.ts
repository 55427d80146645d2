import '@unitbook/form/define';
import { keepIn, readHousehold, type Household, type TariffChoice } from '@unitbook/form';
import { keepOffline } from './keep-offline.ts';

const FOLDER = '../../../tariffs-examples/';
const names = import.meta.glob<string>('../../../tariffs-examples/*.json', { eager: true, import: 'name' });
const texts = import.meta.glob<string>('../../../tariffs-examples/*.json', {
  query: '?raw',
  import: 'default',
});
const tariffs = Object.entries(texts).map(([path, load]): TariffChoice => {
  const id = path.slice(FOLDER.length).replace(/\.json$/, '');
  return { id, name: names[path] ?? id, load };
});

/** The day on the reader's calendar; the engine has no clock of its own. */
function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${String(now.getFullYear())}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

async function demo(): Promise<Household | null> {
  const { default: text } = await import('../../../tariffs-examples/households/demo.json?raw');
  const read = readHousehold(text);
  return read.kind === 'household' ? read.household : null;
}

const book = document.createElement('unitbook-book');
book.tariffs = tariffs;
book.today = today();
book.demo = await demo();
book.keep = keepIn(() => window.localStorage);
document.querySelector('main')?.append(book);

if (import.meta.env.PROD) keepOffline();
