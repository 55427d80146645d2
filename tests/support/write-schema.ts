// Writes the JSON Schemas of documents: `node tests/support/run.mjs tests/support/write-schema.ts`.
import { mkdirSync, writeFileSync } from 'node:fs';
import { schemaText } from './schema-text.ts';

const folder = 'packages/engine/schema';
mkdirSync(folder, { recursive: true });
for (const name of ['tariff', 'cases', 'dispute'] as const)
  writeFileSync(`${folder}/${name}.schema.json`, schemaText(name));
