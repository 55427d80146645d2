import { spawn } from 'node:child_process';

/** Each check is an npm script. Lanes run side by side; within a lane one check follows another. */
const LANES = [
  ['lint', 'format:check'],
  ['typecheck', 'build', 'imports', 'unused'],
];

/**
 * Run one program and keep what it says, so that checks running side by side do not mix their lines.
 * @param {string} program
 * @param {string[]} words
 * @returns {Promise<{ isPassed: boolean, text: string }>}
 */
function runQuietly(program, words) {
  return new Promise((resolve) => {
    const child = spawn(program, words, {
      stdio: ['ignore', 'pipe', 'pipe'],
      shell: process.platform === 'win32',
    });
    let text = '';
    const keep = (/** @type {Buffer} */ chunk) => (text += chunk.toString());
    child.stdout.on('data', keep);
    child.stderr.on('data', keep);
    child.on('error', (error) => resolve({ isPassed: false, text: `${text}${error.message}\n` }));
    child.on('close', (status) => resolve({ isPassed: status === 0, text }));
  });
}

/** @param {string} name */
async function runCheck(name) {
  const started = performance.now();
  const { isPassed, text } = await runQuietly('npm', ['run', '--silent', name]);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(`${isPassed ? 'passed' : 'FAILED'}  ${name}  ${seconds} s`);
  if (!isPassed) console.log(text.trimEnd());
  return isPassed;
}

/**
 * Run every static check, each to its end whatever the others say.
 * @returns {Promise<import('./counts.mjs').Counts>}
 */
export async function runChecks() {
  const counts = { passed: 0, failed: 0, skipped: 0 };
  await Promise.all(
    LANES.map(async (lane) => {
      for (const name of lane) counts[(await runCheck(name)) ? 'passed' : 'failed']++;
    }),
  );
  return counts;
}
