import { expect, it } from 'vitest';
import { anchored, placeFlags, spreadNames } from './flags.ts';
import { nameEvery, textWidth, widestOf, wrapped } from './text-width.ts';

it('puts labels in one row where they have room', () => {
  const { placed, height } = placeFlags(
    [
      { x: 250, label: 'far' },
      { x: 40, label: 'near' },
    ],
    10,
    320,
  );
  expect(placed.map(({ label, foot }) => [label, foot])).toEqual([
    ['near', 25],
    ['far', 25],
  ]);
  expect(height).toBe(15);
});

it.each([
  { one: 90, other: 110, order: ['first', 'second'] },
  { one: 250, other: 280, order: ['second', 'first'] },
])('lets no line cross a label beneath its own: $one and $other', ({ one, other, order }) => {
  const words = 'label that is a good deal longer than its place is wide';
  const { placed, height } = placeFlags(
    [
      { x: one, label: `first ${words}` },
      { x: other, label: `second ${words}` },
    ],
    0,
    320,
  );
  const [above, beneath] = placed;
  expect(placed.map(({ label }) => label.split(' ')[0])).toEqual(order);
  const right = (beneath?.left ?? 0) + widestOf(beneath?.lines ?? []);
  expect((above?.x ?? 0) < (beneath?.left ?? 0) || (above?.x ?? 0) > right).toBe(true);
  expect((beneath?.foot ?? 0) - (above?.foot ?? 0)).toBe(15 * (above?.lines.length ?? 0) + 3);
  expect(height).toBe(placed.reduce((sum, { lines }) => sum + 15 * lines.length + 3, 0));
});

it('keeps labels in the drawing, and takes no room for none', () => {
  const { placed } = placeFlags([{ x: 318, label: 'at the very end' }], 0, 320);
  expect((placed[0]?.left ?? 0) + textWidth('at the very end') <= 320).toBe(true);
  expect(placeFlags([], 5, 320)).toEqual({ placed: [], height: 0 });
  expect(anchored(40, 90, [0, 100])).toEqual({ at: 100, anchor: 'end', left: 60 });
  expect(anchored(40, 50, [0, 100])).toEqual({ at: 50, anchor: 'middle', left: 30 });
});

it('spreads names, but not beyond their room', () => {
  const names = [
    { name: 'b', y: 50 },
    { name: 'a', y: 48 },
    { name: 'c', y: 52 },
  ];
  expect(spreadNames(names, [0, 200]).map(({ name, y }) => [name, y])).toEqual([
    ['a', 48],
    ['b', 63],
    ['c', 78],
  ]);
  expect(spreadNames(names, [0, 60]).map(({ y }) => y)).toEqual([30, 45, 60]);
  expect(spreadNames([], [0, 60])).toEqual([]);
});

it('wraps a text between words and never within one', () => {
  expect(wrapped('one two three', 1)).toEqual(['one', 'two', 'three']);
  expect(wrapped('one two three', 1000)).toEqual(['one two three']);
  expect(wrapped('4\u00a0kWp and more', 1)).toEqual(['4\u00a0kWp', 'and', 'more']);
});

it('writes every name, or every second, as there is room', () => {
  expect(nameEvery(['Jan', 'Feb'], 40, [1, 2, 3])).toBe(1);
  expect(nameEvery(['Jan', 'Feb'], 18, [1, 2, 3])).toBe(2);
  expect(nameEvery(['Jan', 'Feb'], 0, [1, 2, 3])).toBe(3);
  expect(nameEvery([], 10, [1, 2])).toBe(1);
});
