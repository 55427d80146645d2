// Writes docs/tariffs.md: `node tests/support/run.mjs tests/support/write-tariff-list.ts`.
import { writeFileSync } from 'node:fs';
import { tariffList } from '../docs/tariff-list.ts';

writeFileSync('docs/tariffs.md', tariffList());
