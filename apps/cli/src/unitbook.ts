#!/usr/bin/env node
import { isBatchWorker, serveBatch } from './batch/index.ts';
import { nodeIo } from './node-io.ts';
import { run } from './run.ts';

// Whoever reads our output may stop reading: `unitbook demo | head`. That is no failure of ours, and what was found
// stays found: the command goes on to its own exit status, and writes nothing more.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') return;
  const reason = error.code === 'ENOSPC' ? 'no space is left' : error.message;
  process.stderr.write(`standard output  Not all of the page could be written: ${reason}.\n`);
  process.exit(2);
});

// Nobody is left who could be told.
process.stderr.on('error', () => undefined);

async function main(): Promise<void> {
  try {
    process.exitCode = await run(process.argv.slice(2), nodeIo());
  } catch (error) {
    // Bad input never comes here: it is told by findings.
    const reason = error instanceof Error ? error.message : String(error);
    process.stderr.write(
      `unitbook  A fault of unitbook itself: ${reason}. Please report it with what you typed.\n`,
    );
    process.exitCode = 2;
  }
}

if (isBatchWorker()) serveBatch();
else await main();
