// The bench of tables alone: node tests/support/run.mjs tests/bench/check-batch-main.ts [--runs] [--long]
import { measureBatchRuns, measureBatchSpeed } from './check-batch-bench.ts';

console.log(measureBatchSpeed());
if (process.argv.includes('--runs')) console.log(await measureBatchRuns(process.argv.includes('--long')));
