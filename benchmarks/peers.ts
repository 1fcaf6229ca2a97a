/** Finds the peers of the forecast benchmark, or says how to get them. */
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';

/** Debian packages that bring them; `npm run bench -- --install` asks apt-get for these, nothing else. */
export const PACKAGES = {
  scipy: ['python3-scipy', 'python3-numpy'],
  cvode: ['gcc', 'libc6-dev', 'libsundials-dev'],
} as const;

export interface Peers {
  /** An interpreter that has SciPy, with the versions it told. */
  readonly python: { readonly path: string; readonly versions: string } | null;
  /** The compiled C program, with compiler and library. */
  readonly cvode: { readonly path: string; readonly versions: string } | null;
  readonly missing: readonly string[];
}

/** Looks for both; the C program is compiled into `folder`. */
export function findPeers(folder: string): Peers {
  const python = findPython();
  const cvode = compileCvode(folder);
  const missing: string[] = [];
  const get = (packages: readonly string[]) => `apt-get install -y ${packages.join(' ')}`;
  if (python === null) missing.push(`SciPy: no python3 here has it. Debian: ${get(PACKAGES.scipy)}`);
  if (cvode === null)
    missing.push(`SUNDIALS CVODE: the C program does not compile. Debian: ${get(PACKAGES.cvode)}`);
  return { python, cvode, missing };
}

/** Throws where apt-get is not there, fails, or this is not root. */
export function installPeers(): void {
  if (process.getuid?.() !== 0)
    throw new Error('--install needs root: it runs apt-get. Or install the packages yourself.');
  const packages = Object.values(PACKAGES).flat();
  execFileSync('apt-get', ['install', '-y', ...packages], {
    stdio: 'inherit',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
}

function quietly(file: string, args: readonly string[]): string | null {
  try {
    return execFileSync(file, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
  } catch {
    return null;
  }
}

/** The system's interpreter first: it is the one Debian's SciPy belongs to. */
function findPython(): Peers['python'] {
  const ask =
    'import sys, numpy, scipy; print(f"SciPy {scipy.__version__}, NumPy {numpy.__version__}, Python {sys.version.split()[0]}")';
  for (const path of ['/usr/bin/python3', 'python3']) {
    const versions = quietly(path, ['-c', ask]);
    if (versions !== null) return { path, versions: versions.trim() };
  }
  return null;
}

const LIBRARIES = [
  'cvode',
  'nvecserial',
  'sunlinsolband',
  'sunlinsoldense',
  'sunmatrixband',
  'sunmatrixdense',
];

function compileCvode(folder: string): Peers['cvode'] {
  const path = join(folder, 'cvode');
  const built = quietly('cc', [
    '-O3',
    '-march=native',
    '-o',
    path,
    join(import.meta.dirname, 'forecast', 'cvode.c'),
    ...LIBRARIES.map((name) => `-lsundials_${name}`),
    '-lm',
  ]);
  if (built === null) return null;
  const compiler = quietly('cc', ['-dumpfullversion'])?.trim() ?? 'unknown';
  const library = quietly(path, ['--version'])?.trim() ?? 'unknown';
  return { path, versions: `SUNDIALS CVODE ${library}, cc ${compiler} -O3 -march=native` };
}
