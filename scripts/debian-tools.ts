/**
 * Programs that tests read our files with, from Debian's packages: found on the machine, or installed where a test run may do
 * that (as root under CI). Elsewhere a person is told what to install, and the test that needs them says that it was skipped.
 */
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Whether this run must not skip anything: CI says so by the variable everybody sets. */
export function mustNotSkip(): boolean {
  const { CI } = process.env;
  return CI !== undefined && CI !== '' && CI !== 'false' && CI !== '0';
}

/** Path of a program on PATH, or null. */
export function findProgram(name: string): string | null {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    const path = join(folder, name);
    try {
      accessSync(path, constants.X_OK);
      return path;
    } catch {
      // Not in this folder.
    }
  }
  return null;
}

/**
 * True when `present` holds, if need be after the Debian packages were installed, which happens only as root with apt-get at
 * hand. False: it is not there, the reason was printed, and the tests that need it may skip. Throws instead where nothing may
 * be skipped.
 */
export function debianTools(packages: readonly string[], present: () => boolean): boolean {
  if (present()) return true;
  const names = packages.join(' ');
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log(`Installing ${names} for the tests that read our files with them.`);
    const quiet = { stdio: ['ignore', 'ignore', 'inherit'] as ['ignore', 'ignore', 'inherit'] };
    // Test files run side by side: another one may hold the package system for a while.
    const patient = ['-o', 'DPkg::Lock::Timeout=120'];
    for (let attempt = 0; attempt < 3; attempt += 1) {
      spawnSync('apt-get', ['update', ...patient], quiet);
      spawnSync('apt-get', ['install', '-y', '--no-install-recommends', ...patient, ...packages], quiet);
      if (present()) return true;
    }
  }
  const message = `These tests need ${names} (Debian: apt-get install ${names}).`;
  if (mustNotSkip()) throw new Error(message);
  console.warn(`SKIPPED: ${message}`);
  return false;
}
