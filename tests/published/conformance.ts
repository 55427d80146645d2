// Every published case against the engine: `npm run conformance`, with `-- --json` for programs.
import { caseFileProblems, publishedCases } from './load-cases.ts';
import { reportJson, reportText, reproduced, runCases } from './report.ts';

const problems = caseFileProblems();
for (const problem of problems) console.error(problem);
const reports = runCases(publishedCases());
console.log(process.argv.includes('--json') ? reportJson(reports) : reportText(reports));
process.exitCode = problems.length === 0 && reproduced(reports) === reports.length ? 0 : 1;
