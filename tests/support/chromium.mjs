// Finds the Chromium that every browser test starts. Run as a script, it installs Debian's package when
// there is none, and prints the path.
import { execFileSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { fileURLToPath } from 'node:url';

const USUAL = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];
const PACKAGES = ['chromium', 'fonts-dejavu-core', 'fonts-noto-core'];
const HELP =
  'No Chromium found. Install Chromium or Chrome and set CHROMIUM to the path of its program, ' +
  'for instance CHROMIUM=/usr/bin/chromium npm test. ' +
  `On Debian, as root: apt-get install ${PACKAGES.join(' ')}`;

/** Flags of every Chromium we start: no sandbox, for containers; no traffic of its own. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** @param {string} path */
function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * The Chromium to start: CHROMIUM if set, else the first of the usual places.
 * @returns {string | undefined} undefined when there is none
 * @throws when CHROMIUM is set to something that cannot be started
 */
export function findChromium() {
  const asked = process.env['CHROMIUM'];
  if (!asked) return USUAL.find(isProgram);
  if (!isProgram(asked)) throw new Error(`CHROMIUM is ${asked}, which is not a program that can be started.`);
  return asked;
}

/** What every browser test passes to playwright's launch. */
export function launchOptions() {
  const executablePath = findChromium();
  return { args: CHROMIUM_FLAGS, ...(executablePath === undefined ? {} : { executablePath }) };
}

/** @param {string[]} words */
function aptGet(...words) {
  const sudo = process.getuid?.() === 0 ? [] : ['sudo', '-n'];
  const [program = 'env', ...rest] = [
    ...sudo,
    'env',
    'DEBIAN_FRONTEND=noninteractive',
    'apt-get',
    '-qq',
    ...words,
  ];
  execFileSync(program, rest, { stdio: ['ignore', 'ignore', 'inherit'] });
}

function findOrInstall() {
  const found = findChromium();
  if (found !== undefined) return found;
  if (process.platform !== 'linux' || !isProgram('/usr/bin/apt-get')) return undefined;
  console.error(`No Chromium found: installing ${PACKAGES.join(', ')} with apt-get.`);
  try {
    aptGet('update');
    aptGet('install', '-y', '--no-install-recommends', ...PACKAGES);
  } catch (error) {
    console.error(`apt-get failed: ${error instanceof Error ? error.message : String(error)}`);
  }
  return findChromium();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const path = findOrInstall();
  if (path === undefined) {
    console.error(HELP);
    process.exitCode = 1;
  } else {
    console.log(path);
  }
}
