/** The typeface of printed sheets: Source Serif 4 from the package the app is served with, a file for each script. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { unpackWoff } from './unpack-woff.ts';

export type Weight = 400 | 600;

const files = createRequire(import.meta.url);
const FAMILY = '@fontsource/source-serif-4';
const SCRIPTS = ['latin', 'latin-ext', 'greek', 'cyrillic', 'cyrillic-ext', 'vietnamese'] as const;
export type Script = (typeof SCRIPTS)[number];

/** Which characters each file holds, as the package says: "U+0000-00FF,U+0131,...". */
const ranges: Readonly<Record<string, string>> = JSON.parse(
  readFileSync(files.resolve(`${FAMILY}/unicode.json`), 'utf8'),
);
const covered = SCRIPTS.map((script) => ({
  script,
  spans: (ranges[script] ?? '').split(',').map((span) => {
    const [low = '', high = low] = span.replace('U+', '').split('-');
    return [Number.parseInt(low, 16), Number.parseInt(high, 16)] as const;
  }),
}));

const unpacked = new Map<string, Buffer>();

/** The font of a script and weight, read once. */
export function fontBytes(script: Script, weight: Weight): Buffer {
  const name = `${script}-${weight}`;
  const known = unpacked.get(name);
  if (known !== undefined) return known;
  const font = unpackWoff(readFileSync(files.resolve(`${FAMILY}/files/source-serif-4-${name}-normal.woff`)));
  unpacked.set(name, font);
  return font;
}

/** The file that holds a character; null when none does. */
function scriptOf(character: string): Script | null {
  const code = character.codePointAt(0)!;
  const found = covered.find(({ spans }) => spans.some(([low, high]) => code >= low && code <= high));
  return found?.script ?? null;
}

export interface Run {
  readonly script: Script;
  readonly text: string;
}

/** Cuts a text into runs of one file each. Control characters become spaces, what no file holds a question mark. */
export function scriptRuns(text: string): Run[] {
  const runs: { script: Script; text: string }[] = [];
  for (const character of text.toWellFormed().normalize('NFC')) {
    const plain = /[\p{Cc}\p{Zl}\p{Zp}]/u.test(character) ? ' ' : character;
    // U+FFFD stands for half a character: the package lists it, and it reads as a question mark.
    const script = plain === '\uFFFD' ? null : scriptOf(plain);
    const [own, put] = script === null ? (['latin', '?'] as const) : ([script, plain] as const);
    const last = runs.at(-1);
    if (last !== undefined && last.script === own) last.text += put;
    else runs.push({ script: own, text: put });
  }
  return runs;
}
