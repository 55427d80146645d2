import {
  checkCase,
  checkedCasesDocument,
  describeFinding,
  locate,
  minorUnitDigits,
  type CasesDocument,
  type CheckedCase,
  type Finding,
  type Tariff,
} from '@unitbook/engine';
import { about, commandFinding, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { readCasesFile, type CasesFile } from '../read/cases-file.ts';
import { fileName } from '../read/read-bytes.ts';
import { readTariffFile } from '../read/tariff-file.ts';
import { casePage, countLine, outcomeOf } from '../render/case-page.ts';
import { CAUTIONS } from '../render/cautions.ts';
import { makeNotation, type PageNotation } from '../render/notation.ts';
import { tariffHead } from '../render/tariff-head.ts';
import { finish, type TypedCommand } from './command.ts';

const SUBJECT = 'unitbook tariff';
const MOST_LISTED = 20;

/** The cases to check: all of them, or the one that was typed. */
function chooseCases(
  { cases }: CasesDocument,
  wanted: string | undefined,
): { readonly indexes: readonly number[]; readonly findings: readonly Finding[] } {
  const all = [...cases.keys()];
  if (wanted === undefined) return { indexes: all, findings: [] };
  const indexes = all.filter((index) => cases[index]?.id === wanted);
  if (indexes.length > 0) return { indexes, findings: [] };
  const ids = cases.map(({ id }) => id);
  const more = ids.length > MOST_LISTED ? ` and ${String(ids.length - MOST_LISTED)} more` : '';
  const known = `${ids.slice(0, MOST_LISTED).join(', ')}${more}`;
  return {
    indexes,
    findings: [commandFinding('command/no-such-case', { path: [] }, { value: wanted, known })],
  };
}

interface Checked {
  readonly cases: readonly CheckedCase[];
  readonly findings: readonly Finding[];
}

/** Check cases, and put what was found in its place in their file. */
function checkAll(tariff: Tariff, file: CasesFile, indexes: readonly number[]): Checked {
  const { value, source } = file;
  const checked = indexes.flatMap((index) => {
    const one = value?.cases[index];
    return one === undefined ? [] : [{ index, result: checkCase(tariff, one) }];
  });
  const findings = checked.flatMap(({ index, result }) =>
    result.findings.map((finding) => {
      const placed = { ...finding, path: ['cases', index, ...finding.path] };
      return source === null ? placed : locate(source, placed);
    }),
  );
  return { cases: checked.map(({ result }) => result), findings };
}

interface Page {
  readonly tariff: Tariff;
  readonly cases: readonly CheckedCase[];
  readonly words: string;
  readonly isExplained: boolean;
}

function pageText({ tariff, cases, words, isExplained }: Page, notation: PageNotation): string {
  const pages = cases.flatMap((one) => ['', ...casePage(one, { tariff, notation, isExplained })]);
  const head = tariffHead(tariff.document, 'Worked cases', [['Cases', words]]);
  return [...head, ...pages, '', CAUTIONS, '', countLine(cases), ''].join('\n');
}

/** Findings with their amounts grouped as the pages are. */
function inNotation(findings: readonly Finding[], { number }: PageNotation): readonly Finding[] {
  return findings.map((finding) => ({ ...finding, ...describeFinding(finding, number) }));
}

/** `unitbook tariff FILE --cases CASES`: what a tariff makes of worked cases. */
export async function runTariffCases(typed: TypedCommand, io: CommandIo): Promise<number> {
  const [path = ''] = typed.others;
  const casesPath = typed.values.get('cases') ?? '';
  const tariff = await readTariffFile(io, path);
  const file = await readCasesFile(io, casesPath);
  const read: readonly PlacedFinding[] = [...tariff.findings, ...file.findings];
  if (tariff.value === null || file.value === null) return finish(io, { ran: false, findings: read });
  const chosen = chooseCases(file.value, typed.values.get('case'));
  if (chosen.findings.length > 0)
    return finish(io, { ran: false, findings: [...read, ...about(SUBJECT, chosen.findings)] });
  const { cases, findings } = checkAll(tariff.value, file, chosen.indexes);
  const places = minorUnitDigits(tariff.value.document.currency) ?? 2;
  const notation = makeNotation(typed.values.get('locale') ?? 'en', places);
  const all = file.value.cases.length;
  const words = `${cases.length === all ? String(all) : `${String(cases.length)} of ${String(all)}`}, from ${fileName(casesPath)}`;
  if (typed.switches.has('json')) {
    const document = checkedCasesDocument(tariff.value, cases, findings);
    io.out(`${JSON.stringify(document, null, 2)}\n`);
  } else {
    const isExplained = typed.switches.has('explain');
    io.out(pageText({ tariff: tariff.value, cases, words, isExplained }, notation));
  }
  const placed = [...read, ...about(fileName(casesPath), inNotation(findings, notation))];
  const status = finish(io, { ran: true, findings: placed });
  return cases.some((one) => outcomeOf(one) === 'differs') ? Math.max(status, 1) : status;
}
