import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { TariffsAtHand } from './tariffs-at-hand.ts';

const text = (name: string): string =>
  readFileSync(
    new URL(`../../../../../tariffs-examples/tarumira/${name}/tariff.json`, import.meta.url),
    'utf8',
  );
const choice = (id: string, name: string) => {
  const fetched: string[] = [];
  const load = (): Promise<string> => {
    fetched.push(name);
    return name === '' ? Promise.reject(new Error('no line')) : Promise.resolve(text(name));
  };
  return { id, name: id, load, fetched };
};
const file = (content: string, name = 'tariff.json') => new File([content], name);

it('fetches a choice once it is ticked, and compares the same list until something changes', async () => {
  const choices = [
    choice('home', 'taresco-domestic'),
    choice('shop', 'taresco-shop'),
    choice('far', 'taresco-shop'),
  ];
  const tariffs = new TariffsAtHand(() => undefined);
  tariffs.want(choices, false);
  expect(choices.flatMap(({ fetched }) => fetched)).toEqual([]);
  expect(tariffs.list(choices, 'home').map(({ key, isTicked }) => [key, isTicked])).toEqual([
    ['shop', false],
    ['far', false],
  ]);
  tariffs.tick('shop', true);
  tariffs.want(choices, false);
  tariffs.want(choices, false);
  expect(choices.map(({ fetched }) => fetched.length)).toEqual([0, 1, 0]);
  await expect.poll(() => tariffs.compared(choices, 'home').length).toBe(1);
  const compared = tariffs.compared(choices, 'home');
  expect(compared.map(({ document }) => document.id)).toEqual(['tarumira-shop']);
  expect(tariffs.compared(choices, 'home')).toBe(compared);
  // The one that lies open is not compared with itself.
  expect(tariffs.compared(choices, 'shop')).toEqual([]);
  tariffs.want(choices, true);
  expect(choices.map(({ fetched }) => fetched.length)).toEqual([1, 1, 1]);
});

it('tells of a choice that cannot be fetched', async () => {
  const choices = [choice('gone', '')];
  const heard: string[] = [];
  const tariffs = new TariffsAtHand(() => heard.push('told'));
  tariffs.want(choices, true);
  await expect.poll(() => heard).toEqual(['told']);
  expect(tariffs.list(choices, '')[0]?.view).toEqual({ kind: 'failed', reason: 'no line' });
});

it('compares a file at once, lets one of the same id take its place, and keeps what was there otherwise', async () => {
  const tariffs = new TariffsAtHand(() => undefined);
  await tariffs.openFile(file(text('taresco-shop')));
  await tariffs.openFile(file(text('taresco-shop').replace('small shop', 'larger shop')));
  const names = (): string[] => tariffs.list([], '').map(({ name }) => name);
  expect(names()).toEqual(['Tarumira C-1, larger shop, net-metered (its file)']);
  expect(tariffs.compared([], '')).toHaveLength(1);
  await tariffs.openFile(file('{', 'torn.json'));
  expect(tariffs.refused?.name).toBe('torn.json');
  expect(names()).toHaveLength(1);
  tariffs.tick('file-tarumira-shop', false);
  expect(tariffs.compared([], '')).toEqual([]);
});
