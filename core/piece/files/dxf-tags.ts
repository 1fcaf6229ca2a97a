/** The pairs of group code and value an ASCII DXF file is made of (Autodesk, DXF Reference for AutoCAD 2000, "DXF File Format"). */

import { refuse, refuseTooLarge } from './imported-drawing.ts';

export interface Tag {
  readonly code: number;
  readonly value: string;
  /** Line of the value, counted from 1. */
  readonly line: number;
}

/** One thing of a file: the tags from its 0 to the next. */
export interface Entity {
  readonly type: string;
  readonly line: number;
  readonly tags: readonly Tag[];
}

/** Throws Refused for anything that is not made of such pairs. */
export function readTags(text: string): Tag[] {
  refuseTooLarge(text);
  if (text.startsWith('AutoCAD Binary DXF'))
    refuse(
      'file.binary',
      'This is a binary DXF file.',
      undefined,
      'ASCII DXF; save it as DXF R12 or 2000 ASCII',
    );
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const tags: Tag[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = lines[i]!.trim();
    if (code === '' && lines.length - i <= 2) break;
    if (!/^-?\d{1,4}$/.test(code))
      refuse(
        'file.not-dxf',
        `Line ${i + 1} is not a DXF group code.`,
        code.slice(0, 40),
        'an ASCII DXF file, R12 or later',
      );
    tags.push({ code: Number(code), value: lines[i + 1]!.trim(), line: i + 2 });
  }
  const first = tags.find((t) => t.code !== 999);
  if (first?.code !== 0 || first.value !== 'SECTION')
    refuse(
      'file.not-dxf',
      'The file does not begin with a DXF section.',
      text.slice(0, 40),
      'an ASCII DXF file, R12 or later',
    );
  return tags;
}

/** A number, or a refusal naming its line: NaN, Infinity and words are none. */
export function numberOf(tag: Tag): number {
  const value = /^[+-]?(\d+\.?\d*|\.\d+)([eEdD][+-]?\d+)?$/.test(tag.value)
    ? Number(tag.value.replace(/[dD]/, 'e'))
    : Number.NaN;
  if (!Number.isFinite(value))
    refuse(
      'file.number',
      `Line ${tag.line} should hold a number.`,
      tag.value.slice(0, 40),
      'a finite decimal number',
    );
  return value;
}

/** The value of the first tag with this code as a number. */
export function numberAt(entity: Entity, code: number): number | undefined {
  const tag = entity.tags.find((t) => t.code === code);
  return tag === undefined ? undefined : numberOf(tag);
}

export function needNumber(entity: Entity, code: number): number {
  const value = numberAt(entity, code);
  if (value === undefined)
    refuse(
      'file.incomplete',
      `The ${entity.type} at line ${entity.line} lacks a figure.`,
      undefined,
      `group code ${code}`,
    );
  return value;
}

export function wordAt(entity: Entity, code: number): string | undefined {
  return entity.tags.find((t) => t.code === code)?.value;
}

/** The things of a file, section by section. */
export interface Sections {
  readonly header: ReadonlyMap<string, Tag>;
  readonly tables: readonly Entity[];
  readonly blocks: readonly Entity[];
  readonly entities: readonly Entity[];
  readonly comments: readonly string[];
}

export function readSections(tags: readonly Tag[]): Sections {
  const header = new Map<string, Tag>();
  const found: Record<string, Entity[]> = { TABLES: [], BLOCKS: [], ENTITIES: [] };
  const comments: string[] = [];
  let section = '';
  let ended = false;
  let variable = '';
  let current: { type: string; line: number; tags: Tag[] } | undefined;
  tags.forEach((tag, i) => {
    if (tag.code === 999) comments.push(tag.value);
    else if (tag.code === 0) {
      current = undefined;
      if (tag.value === 'SECTION') section = tags[i + 1]?.code === 2 ? tags[i + 1]!.value : '';
      else if (tag.value === 'ENDSEC') section = '';
      else if (tag.value === 'EOF') ended = true;
      else if (section in found) {
        current = { type: tag.value, line: tag.line, tags: [] };
        found[section]!.push(current);
      }
    } else if (section === 'HEADER') {
      if (tag.code === 9) variable = tag.value;
      else if (!header.has(variable)) header.set(variable, tag);
    } else current?.tags.push(tag);
  });
  if (!ended && section !== '')
    refuse(
      'file.cut-short',
      'The file ends in the middle of a section.',
      section,
      'a whole DXF file, ending in EOF',
    );
  return { header, tables: found.TABLES!, blocks: found.BLOCKS!, entities: found.ENTITIES!, comments };
}
