import { readFlyer, readQuote } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import demoQuoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { blocksOf, page } from './pages.ts';
import { allowedKeys, below, firstCells } from './tables.ts';

/** A quote with a key too many in one of its parts. */
function quoteKeys(at: string): readonly string[] {
  const odd = (key: string): object => (key === at ? { odd: '' } : {});
  const document = {
    ...odd('quote'),
    offer: odd('offer'),
    use: odd('use'),
    plant: odd('plant'),
    generation: odd('generation'),
    selfUse: odd('selfUse'),
    battery: { ...odd('battery'), replacement: odd('next battery') },
    degradation: odd('degradation'),
    escalation: odd('escalation'),
    price: [odd('price')],
    subsidy: { ...odd('subsidy'), tiers: [odd('tiers')] },
    loan: odd('loan'),
    upkeep: { ...odd('upkeep'), replacements: [odd('replacements')] },
    policies: [odd('policies')],
    uncertainty: { ...odd('uncertainty'), policy: odd('policy') },
    carbon: odd('carbon'),
  };
  return allowedKeys(readQuote(JSON.stringify(document)).findings);
}

const first = page('reference/quote.md');
const second = page('reference/quote-2.md');
const tutorial = page('tutorials/installer-3.md');

describe('docs/reference/quote.md and its second page', () => {
  it.each([
    ['## The quote document', 'quote', first],
    ['### offer', 'offer', first],
    ['### use', 'use', first],
    ['### plant', 'plant', first],
    ['### generation', 'generation', first],
    ['### selfUse', 'selfUse', first],
    ['### battery', 'battery', first],
    ['### degradation', 'degradation', first],
    ['### escalation', 'escalation', first],
    ['### price', 'price', second],
    ['### subsidy', 'subsidy', second],
    ['### loan', 'loan', second],
    ['### upkeep', 'upkeep', second],
    ['### policies', 'policies', second],
    ['### uncertainty', 'uncertainty', second],
    ['### carbon', 'carbon', second],
  ])('%s: every field, and no other', (heading, at, text) => {
    const keys = quoteKeys(at);
    expect(keys).not.toEqual(['']);
    expect([...firstCells(below(text, heading))].sort()).toEqual([...keys].sort());
  });

  it.each([
    ['### battery', 'replacement', 'next battery', first],
    ['### subsidy', 'tiers', 'tiers', second],
    ['### upkeep', 'replacements', 'replacements', second],
    ['### uncertainty', 'policy', 'policy', second],
  ])('%s: the row of %s names what stands in it', (heading, key, at, text) => {
    const row = below(text, heading)
      .split('\n')
      .find((line) => line.startsWith(`| \`${key}\` |`));
    const named = [...(row ?? '').matchAll(/`(\w+)`/g)].map(([, name]) => name);
    const keys = quoteKeys(at);
    expect(keys).not.toEqual(['']);
    expect(named).toEqual(expect.arrayContaining([...keys]));
  });

  it('## A flyer: every field, and no other', () => {
    const keys = allowedKeys(readFlyer('{"odd":""}').findings);
    expect([...firstCells(below(second, '## A flyer'))].sort()).toEqual([...keys].sort());
  });

  it('shows flyers that can be read, here and to the installer', () => {
    const shown = [...blocksOf(second), ...blocksOf(tutorial)].filter(({ words }) =>
      /^json (?:flyer|file flyer\.json)$/.test(words),
    );
    expect(shown.map(({ text }) => readFlyer(text).findings)).toEqual([[], []]);
  });
});

describe('docs/tutorials/installer-3.md', () => {
  const parts = blocksOf(tutorial)
    .filter(({ words }) => words === 'json quote')
    .map(({ text }) => JSON.parse(text) as Record<string, unknown>);

  it('shows the parts of the demo quote as they stand in it, each once', () => {
    const demo = JSON.parse(demoQuoteText) as Record<string, unknown>;
    const keys = parts.flatMap((part) => Object.keys(part));
    expect(keys.length).toBeGreaterThan(10);
    expect(new Set(keys).size).toBe(keys.length);
    expect(demo).toMatchObject(Object.assign({}, ...parts) as Record<string, unknown>);
  });

  it('goes through everything that a quote needs, on documents that can be read', () => {
    const read = readQuote(JSON.stringify(Object.assign({}, ...parts)));
    expect(read.findings).toEqual([]);
  });
});
