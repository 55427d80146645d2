// Writes the JSON Schema of tariff documents: `node tests/support/run.mjs tests/support/write-schema.ts`.
import { mkdirSync, writeFileSync } from 'node:fs';
import { schemaText } from './schema-text.ts';

const folder = 'packages/engine/schema';
mkdirSync(folder, { recursive: true });
writeFileSync(`${folder}/tariff.schema.json`, schemaText());
