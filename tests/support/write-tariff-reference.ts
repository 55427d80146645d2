// Writes docs/reference/tariff*.md: `node tests/support/run.mjs tests/support/write-tariff-reference.ts`.
import { writeFileSync } from 'node:fs';
import { tariffReference } from '../docs/tariff-reference.ts';

for (const { name, text } of tariffReference()) writeFileSync(`docs/${name}`, text);
