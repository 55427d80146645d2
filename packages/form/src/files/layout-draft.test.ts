import { expect, it } from 'vitest';
import {
  answerQuestion,
  canRemember,
  changeColumn,
  changeDelimiter,
  confirmedLayout,
  confirmQuestion,
  draftOf,
  draftOfKnown,
  openQuestions,
  questionKeys,
  rememberedLayout,
} from './layout-draft.ts';
import { layoutKey, layoutText } from '@unitbook/meter-files';

/** The order of day and month, the clock and whether numbers are registers are not told by this. */
const HEAD = 'Zeit;Netzbezug kWh;Stufe\n1.5.2025 0:15;0,250;1\n1.5.2025 0:30;1,125;1\n';

it('asks about what the text leaves in doubt, one by one', () => {
  const draft = draftOf(HEAD);
  expect(questionKeys(draft)).toEqual([
    'delimiter',
    'header',
    'decimal-mark',
    'grouping',
    'date-order',
    'clock',
    'holds',
    'column-0',
    'column-1',
    'column-2',
  ]);
  expect(openQuestions(draft)).toEqual(['date-order', 'clock', 'holds', 'column-2']);
  const once = confirmQuestion(draft, 'clock', true);
  expect(openQuestions(once)).toEqual(['date-order', 'holds', 'column-2']);
  expect(openQuestions(confirmQuestion(once, 'clock', false))).toEqual(openQuestions(draft));
});

it('takes a choice for confirmed, and asks what goes with it', () => {
  const draft = answerQuestion(draftOf(HEAD), 'holds', { holds: 'intervals' });
  expect(openQuestions(draft)).toEqual(['date-order', 'clock', 'minutes', 'label', 'column-2']);
  expect(confirmedLayout(draft).findings.map(({ code }) => code)).toEqual([
    'table-layout/interval-needs',
    'table-layout/interval-needs',
  ]);
  const both = answerQuestion(answerQuestion(draft, 'minutes', { minutes: '15' }), 'label', { label: 'end' });
  expect(confirmedLayout(both).layout).toMatchObject({ holds: 'intervals', minutes: '15', label: 'end' });
  const back = answerQuestion(both, 'holds', { holds: 'registers' });
  expect(back.layout).not.toHaveProperty('minutes');
  expect(confirmedLayout(back).findings).toEqual([]);
});

it('lets a mark not stand for two things', () => {
  const grouped = answerQuestion(draftOf(HEAD), 'grouping', { grouping: '.' });
  const draft = answerQuestion(grouped, 'decimal-mark', { decimalMark: '.' });
  expect(draft.layout).toMatchObject({ decimalMark: '.', grouping: '' });
});

it('asks again about a column that is changed', () => {
  const draft = confirmQuestion(draftOf(HEAD), 'column-2', true);
  const changed = changeColumn(draft, 2, { is: 'export', unit: 'kWh' });
  expect(openQuestions(changed)).toContain('column-2');
  expect(changed.layout.columns[2]).toEqual({ is: 'export', unit: 'kWh' });
  expect(openQuestions(changeColumn(draftOf(HEAD), 1, { is: 'generation', unit: 'Wh' }))).toContain(
    'column-1',
  );
});

it('detects everything anew by another delimiter', () => {
  const draft = changeDelimiter(draftOf(HEAD), ',');
  expect(draft.layout.delimiter).toBe(',');
  expect(openQuestions(draft)).not.toContain('delimiter');
});

it('finds what was remembered, also where another delimiter was named', () => {
  const layout = { ...draftOf(HEAD).layout, confirmed: true };
  const texts = new Map([[layoutKey(layout.header), layoutText(layout)]]);
  const load = (key: string): string | null => texts.get(key) ?? null;
  expect(rememberedLayout(HEAD, load)).toEqual({ key: '["zeit","netzbezug kwh","stufe"]', layout });
  expect(rememberedLayout('Zeit;Netzbezug kWh\n1.5.2025;1\n', load)).toBeNull();
  expect(openQuestions(draftOfKnown(HEAD, layout))).toEqual([]);
  const odd = 'a|b;c\n2025-05-01|1;2\n2025-05-02|3;4\n';
  const named = changeDelimiter(draftOf(odd), ';').layout;
  const valued = {
    ...named,
    columns: [{ is: 'date' as const }, { is: 'import' as const, unit: 'kWh' as const }],
    confirmed: true,
  };
  texts.set(layoutKey(valued.header), layoutText(valued));
  expect(rememberedLayout(odd, load)?.layout.delimiter).toBe(';');
});

it('remembers no table without names, nor one whose kept text is damaged', () => {
  expect(canRemember(draftOf('2025-05-01;1\n2025-05-02;2\n').layout)).toBe(false);
  expect(rememberedLayout('2025-05-01;1\n2025-05-02;2\n', () => '{}')).toBeNull();
  expect(rememberedLayout(HEAD, () => '{"format":')).toBeNull();
});
