import { checkCase, dayText, type Tariff, type WorkedCase } from '@unitbook/engine';
import { readHead, type Worked } from './worked-head.ts';

type Expected = NonNullable<WorkedCase['periods'][number]['expected']>;

const COLUMN = /^(\S+) (opening|added|used|paid|lapsed|closing)$/;

/** "net 222, bank closing 58, payable 0" as what a period of a case is expected to come to. */
function expectedOf(said: readonly string[], lines: readonly string[]): Expected {
  const expected: { payable?: string; lines: Record<string, string>; quantities: Record<string, string> } = {
    lines: {},
    quantities: {},
  };
  const ledgers: Record<string, Record<string, string>> = {};
  for (const one of said) {
    const at = one.lastIndexOf(' ');
    const [name, value] = [one.slice(0, at), one.slice(at + 1)];
    const [, ledger, column] = COLUMN.exec(name) ?? [];
    if (name === 'payable') expected.payable = value;
    else if (ledger !== undefined && column !== undefined)
      ledgers[ledger] = { ...ledgers[ledger], [column]: value };
    else (lines.includes(name) ? expected.lines : expected.quantities)[name] = value;
  }
  return { ...expected, ledgers };
}

/** Periods one after the other: a head each, and below it what they come to. */
export function workedPeriods(at: string, groups: readonly string[], tariff: Tariff): readonly Worked[] {
  const lines = tariff.versions.flatMap(({ item }) => item.charges.map(({ id }) => id));
  const periods = groups.map((group) => {
    const [head = '', ...rows] = group.split('\n');
    const { period, quantities } = readHead(head);
    const said = rows.join(' ').split(/, */);
    return {
      head,
      said,
      period: {
        from: dayText(period.from),
        to: dayText(period.to),
        quantities,
        expected: expectedOf(said, lines),
      },
    };
  });
  const { checks, findings } = checkCase(tariff, {
    id: 'page',
    title: 'A page',
    kind: 'invented',
    periods: periods.map(({ period }) => period),
  });
  if (findings.length > 0) throw new Error(JSON.stringify(findings));
  return periods.map(({ head, said }, index) => {
    const own = checks.filter(({ period }) => period === index);
    if (own.length !== said.length) throw new Error(`${at}: a name stands twice below ${head}`);
    const found = own.map(
      ({ what, got }) => `${what.replace(/^(?:quantity|line|ledger) /, '')} ${got ?? 'none'}`,
    );
    return { at, what: head, said: [...said].sort(), found: [...found].sort() };
  });
}
