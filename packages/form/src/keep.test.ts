import { expect, it } from 'vitest';
import { memory } from '../../../tests/support/memory.ts';
import { keepIn, type TextStorage } from './keep.ts';

it('keeps the demo and the own book apart', () => {
  const { storage } = memory();
  const keep = keepIn(() => storage);
  expect(keep.load('own')).toBeNull();
  expect(keep.openSlot()).toBe('demo');
  expect(keep.save('own', 'a')).toBe(true);
  keep.open('own');
  expect([keep.load('own'), keep.load('demo'), keep.openSlot()]).toEqual(['a', null, 'own']);
});

it('numbers what is put aside, each text once, in order', () => {
  const { storage, texts } = memory({ 'unitbook-aside-9': 'i' });
  const keep = keepIn(() => storage);
  expect(keep.setAside('j')).toBe(true);
  expect(keep.setAside('j')).toBe(true);
  expect(texts.get('unitbook-aside-10')).toBe('j');
  expect(keep.asides().map(({ text }) => text)).toEqual(['i', 'j']);
});

it('puts another text in the place of one put aside', () => {
  const { storage } = memory({ 'unitbook-aside-1': 'i' });
  const keep = keepIn(() => storage);
  expect(keep.replaceAside('unitbook-aside-1', 'j')).toBe(true);
  expect(keep.asides()).toEqual([{ key: 'unitbook-aside-1', text: 'j' }]);
});

it('tells that a full or forbidden storage kept nothing', () => {
  const { storage } = memory();
  const full: TextStorage = {
    length: 0,
    key: (index) => storage.key(index),
    getItem: (key) => storage.getItem(key),
    setItem: () => {
      throw new Error('full');
    },
  };
  expect(keepIn(() => full).save('own', 'a')).toBe(false);
  expect(keepIn(() => full).setAside('a')).toBe(false);
  const forbidden = keepIn(() => {
    throw new Error('forbidden');
  });
  forbidden.open('own');
  expect([forbidden.load('own'), forbidden.asides(), forbidden.openSlot()]).toEqual([null, [], 'demo']);
});
