import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { schemaText } from '../../../../tests/support/schema-text.ts';
import { tariffJsonSchema } from './schema.ts';

it.each(['tariff', 'cases', 'dispute'] as const)(
  'is the JSON Schema of %s that stands beside the source; write it anew with tests/support/write-schema.ts',
  (name) => {
    const file = new URL(`../../schema/${name}.schema.json`, import.meta.url);
    expect(readFileSync(file, 'utf8')).toBe(schemaText(name));
  },
);

it('says that a tariff is an object without other keys, and what its numbers are', () => {
  const schema = tariffJsonSchema();
  expect(schema).toMatchObject({
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    type: 'object',
    additionalProperties: false,
  });
  expect(JSON.stringify(schema)).toContain('A decimal number written as text, such as \\"3.10\\".');
});
