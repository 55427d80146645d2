// Every outside check against the engine: `npm run conformance`, with `-- --json` for programs.
import { caseFileProblems, publishedCases } from './load-cases.ts';
import { reportDocument, reportText, reproduced, runCases } from './report.ts';
import { folderCases, READ_FOLDERS, runWorked } from './worked-cases.ts';
import { workedDocument, workedReproduced, workedText } from './worked-report.ts';

const problems = [...caseFileProblems(), ...READ_FOLDERS.flatMap((one) => one.problems)];
for (const problem of problems) console.error(problem);
const reports = runCases(publishedCases());
const worked = folderCases().map(runWorked);
// A folder that cannot be read counts as one that is not reproduced: its cases cannot be told.
const unread = READ_FOLDERS.filter(({ tariff, cases }) => tariff === null || cases === null).length;
const all = reports.length + worked.length + unread;
const ok = reproduced(reports) + workedReproduced(worked);

if (process.argv.includes('--json')) {
  const documents = { published: reportDocument(reports), worked: workedDocument(worked) };
  console.log(JSON.stringify({ total: all, reproduced: ok, ...documents }));
} else {
  const more = problems.length === 0 ? '' : `; ${problems.length} problems in the files, among the messages`;
  console.log([reportText(reports), '', workedText(worked), '', `${ok} of ${all}${more}`].join('\n'));
}
process.exitCode = problems.length === 0 && ok === all ? 0 : 1;
