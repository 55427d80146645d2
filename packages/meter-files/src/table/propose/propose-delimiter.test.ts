import { expect, it } from 'vitest';
import { proposeTable } from './propose-table.ts';

const HEAD = 'day;import kWh\n13.5.2025;1,5\n14.5.2025;2,5\n';

it('takes a table apart by the delimiter that a person names', () => {
  expect(proposeTable(HEAD).layout.delimiter).toBe(';');
  const { layout, decisions } = proposeTable(HEAD, { delimiter: ',' });
  expect(layout.delimiter).toBe(',');
  // By commas the rows have the two cells "13.5.2025;1" and "5".
  expect(layout.columns).toHaveLength(2);
  expect(decisions[0]).toMatchObject({ about: 'delimiter', detected: ',', certain: false });
});

it('names the delimiter that is detected without changing anything', () => {
  expect(proposeTable(HEAD, { delimiter: ';' })).toEqual(proposeTable(HEAD));
});
