import { expect, it } from 'vitest';
import { keepLayoutsIn, type LayoutStorage } from './keep-layouts.ts';

function inMemory(): { storage: LayoutStorage; texts: Map<string, string> } {
  const texts = new Map<string, string>();
  const storage: LayoutStorage = {
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, text) => void texts.set(key, text),
    removeItem: (key) => void texts.delete(key),
  };
  return { storage, texts };
}

it('remembers a layout by its columns, and forgets it', () => {
  const { storage, texts } = inMemory();
  const keep = keepLayoutsIn(() => storage);
  expect(keep.load('["time"]')).toBeNull();
  expect(keep.save('["time"]', '{}')).toBe(true);
  expect([...texts]).toEqual([['unitbook-columns-["time"]', '{}']]);
  expect(keep.load('["time"]')).toBe('{}');
  expect(keep.forget('["time"]')).toBe(true);
  expect([...texts]).toEqual([]);
});

it('says that it keeps nothing where the browser refuses', () => {
  const keep = keepLayoutsIn(() => {
    throw new Error('refused');
  });
  expect(keep.load('a')).toBeNull();
  expect(keep.save('a', 'b')).toBe(false);
  expect(keep.forget('a')).toBe(false);
});
