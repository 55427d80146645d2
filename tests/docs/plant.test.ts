import {
  exactText,
  ACCURACY_CLASSES,
  METER_LIMITS,
  PLANT_FINDINGS,
  readPlant,
  UPKEEP_CAUTIONS,
  UPKEEP_TASKS,
  type UpkeepPeriod,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { blocksOf, page } from './pages.ts';
import { allowedKeys, below, firstCells } from './tables.ts';

describe('docs/reference/plant.md and its second page', () => {
  const text = page('reference/plant.md');
  const second = page('reference/plant-2.md');
  const plant = (at: string): readonly string[] => {
    const odd = (key: string): object => (key === at ? { odd: '' } : {});
    const document = {
      ...odd('plant'),
      capacity: [odd('capacity')],
      inverters: odd('inverters'),
      expected: odd('expected'),
      uncertainty: odd('uncertainty'),
      diary: [odd('diary')],
    };
    return allowedKeys(readPlant(JSON.stringify(document)).findings);
  };

  it.each([
    ['## The plant document', 'plant'],
    ['### capacity', 'capacity'],
    ['### inverters', 'inverters'],
    ['### expected', 'expected'],
    ['### uncertainty', 'uncertainty'],
    ['### diary', 'diary'],
  ])('%s: every field, and no other', (heading, at) => {
    const keys = plant(at);
    expect(keys).not.toEqual(['']);
    expect([...firstCells(below(text, heading))].sort()).toEqual([...keys].sort());
  });

  it('shows documents that can be read, here and to the installer', () => {
    const all = text + page('tutorials/installer-2.md');
    const shown = blocksOf(all).filter(({ words }) => /^json (?:plant|file plant\.json)$/.test(words));
    expect(shown.map((block) => readPlant(block.text).findings)).toEqual([[], []]);
  });

  it('says of every finding of single days what it does not mean', () => {
    const told = firstCells(below(second, '## What the days show'));
    const days = Object.keys(PLANT_FINDINGS).filter((code) =>
      /^plant\/(?:zero|stuck|missing|same|spike|lump|step|slow|short|season)/.test(code),
    );
    expect([...told].sort()).toEqual(days.sort());
  });

  it('have every task of upkeep with its times, and whose work it is', () => {
    const everyText = (every: UpkeepPeriod): string => {
      const [count, unit] = 'days' in every ? [every.days, 'day'] : [every.months, 'month'];
      return `${String(count)} ${unit}${count === 1 ? '' : 's'}`;
    };
    const rows = below(second, '## Upkeep').match(/^\| `.*$/gm) ?? [];
    const told = rows.map((row) => row.split(' | ').filter((_, at) => at !== 3));
    const tasks = UPKEEP_TASKS.map(({ id, every, everyOnCoast, isForLicensed, source }) => [
      `| \`${id}\``,
      everyText(every),
      everyText(everyOnCoast),
      isForLicensed,
      source,
    ]);
    const said = told.map(([id, every, coast, who = '', source = '']) => {
      return [id, every, coast, who.includes('licensed'), source.replace(/ \|$/, '')];
    });
    expect(said).toEqual(tasks);
    expect(below(second, '### Cautions').match(/^- \*\*/gm)?.length).toBe(UPKEEP_CAUTIONS.length);
  });

  it('have the limits of every class of meters', () => {
    const rows = below(second, '## How far meters may be off').match(/^\| `.*$/gm) ?? [];
    const told = rows.map((row) => row.split(' | ').slice(0, 3));
    const percent = (hundredths: number): string => exactText(hundredths, 100);
    expect(told).toEqual(
      ACCURACY_CLASSES.map((name) => {
        const { low, usual } = METER_LIMITS[name];
        return [`| \`${name}\``, percent(low), percent(usual)];
      }),
    );
  });
});
