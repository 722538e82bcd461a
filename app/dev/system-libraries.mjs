// Sees to the system libraries and tools that Debian and Ubuntu lack for running and testing the program.
// Installs only as root; otherwise prints the command and leaves the machine alone.
import { askCommand, isRoot, runCommand } from './run-command.mjs';

// Newer releases renamed some packages (64-bit time); the first name that the release knows is taken.
const electronPackages = [
  ['libgtk-3-0t64', 'libgtk-3-0'],
  ['libnss3'],
  ['libasound2t64', 'libasound2'],
  ['libgbm1'],
  ['libxss1'],
  ['libatk-bridge2.0-0t64', 'libatk-bridge2.0-0'],
];

/** @param {string} command */
function isMissing(command) {
  return askCommand('which', [command]).status !== 0;
}

/**
 * The libraries that the runtime links to and the system does not have.
 * @param {string} executablePath
 */
function missingLibraries(executablePath) {
  const lines = askCommand('ldd', [executablePath]).output.split('\n');
  return lines.filter((line) => line.includes('not found')).map((line) => line.trim().split(' ')[0] ?? line);
}

/** @param {string} name */
function isOffered(name) {
  return /Candidate: (?!\(none\))/.test(askCommand('apt-cache', ['policy', name]).output);
}

/** @param {readonly string[]} names */
function offeredName(names) {
  return names.find(isOffered) ?? names.at(-1) ?? '';
}

/**
 * @param {{executablePath?: string, needsDisplay?: boolean, needsPdfTools?: boolean}} wanted
 * @returns {string[][]} the packages to install, each as the names it may go by
 */
function missingPackages({ executablePath, needsDisplay, needsPdfTools }) {
  const packages = [];
  if (executablePath && missingLibraries(executablePath).length > 0) packages.push(...electronPackages);
  if (needsDisplay && isMissing('Xvfb')) packages.push(['xvfb']);
  if (needsPdfTools && isMissing('pdftotext')) packages.push(['poppler-utils']);
  if (needsPdfTools && isMissing('qpdf')) packages.push(['qpdf']);
  if (needsPdfTools && isMissing('zbarimg')) packages.push(['zbar-tools']);
  return packages;
}

/** @param {string} message @returns {never} */
function refuse(message) {
  throw new Error(message);
}

/**
 * Makes sure that what the wanted uses need is on this machine.
 * @param {{executablePath?: string, needsDisplay?: boolean, needsPdfTools?: boolean}} wanted
 * @throws where something is missing and cannot be installed from here; the message has the command to type
 */
export async function ensureSystemLibraries(wanted) {
  if (process.platform !== 'linux') return;
  const packages = missingPackages(wanted);
  if (packages.length === 0) return;
  if (isMissing('apt-get')) {
    const names = packages.map((names) => names.at(-1)).join(' ');
    refuse(`This machine lacks what Debian calls: ${names}. Install the same with its own package tool.`);
  }
  const options = ['-y', '-qq', '--no-install-recommends', '-o', 'Dpkg::Use-Pty=0', '-o', 'DPkg::Lock::Timeout=300'];
  if (!isRoot()) {
    const names = packages.map(offeredName).join(' ');
    refuse(
      `Some system packages are missing. Type:\n  sudo apt-get update && sudo apt-get install --no-install-recommends ${names}`,
    );
  }
  // The package lists of a bare machine are empty or old, and only with them is it known which name is offered.
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  await runCommand('apt-get', ['update', '-qq'], { env });
  const names = packages.map(offeredName);
  console.log(`Installing system packages: ${names.join(' ')}`);
  const status = await runCommand('apt-get', ['install', ...options, ...names], { env });
  const left = missingPackages(wanted);
  if (status !== 0 || left.length > 0) {
    const lacking = wanted.executablePath ? missingLibraries(wanted.executablePath).join(' ') : '';
    refuse(`System packages could not be installed: ${names.join(' ')}. ${lacking}`.trim());
  }
}
