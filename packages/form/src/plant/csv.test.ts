import { expect, it } from 'vitest';
import { csvText } from './csv.ts';

it('sets cells in quotation marks where they need them', () => {
  expect(csvText(['day', 'note'], [['2025-05-01', 'dust, "thick"\nand wet']])).toBe(
    'day,note\n2025-05-01,"dust, ""thick""\nand wet"\n',
  );
});

it('lets no text pass for a formula, and leaves numbers alone', () => {
  expect(csvText(['a'], [['=1+1'], ['@x'], ['-x'], ['-0.5'], ['+3'], ['']])).toBe(
    "a\n'=1+1\n'@x\n'-x\n-0.5\n'+3\n\n",
  );
});
