/** The parts a DXF 2000 file (AC1015) must hold round its entities (Autodesk, DXF Reference for AutoCAD 2000). */

import { LAYERS, type Pair } from './dxf-pairs.ts';

export const LAYER_COLOURS = { OUTLINE: 7, 'CUT-OUTS': 1, 'CENTRE-LINES': 4, EDGES: 3 } as const;

/** Handles of what other parts point at. */
const TABLE = {
  vport: '8',
  ltype: '5',
  layer: '2',
  style: '3',
  view: '6',
  ucs: '7',
  appid: '9',
  dimstyle: 'A',
};
const RECORDS = '1';
const ROOT = 'C';
export const MODEL_SPACE = '1F';
const PAPER_SPACE = '1B';
/** Above every fixed handle. */
export const FIRST_HANDLE = 0x100;

export function tables2000(handle: () => string): Pair[] {
  const table = (name: string, id: string, count: number, ...entries: Pair[][]): Pair[] => [
    [0, 'TABLE'],
    [2, name],
    [5, id],
    [330, '0'],
    [100, 'AcDbSymbolTable'],
    [70, count],
    ...(name === 'DIMSTYLE' ? [[100, 'AcDbDimStyleTable'] as Pair] : []),
    ...entries.flat(),
    [0, 'ENDTAB'],
  ];
  const entry = (type: string, owner: string, kind: string, ...pairs: Pair[]): Pair[] => [
    [0, type],
    [type === 'DIMSTYLE' ? 105 : 5, handle()],
    [330, owner],
    [100, 'AcDbSymbolTableRecord'],
    [100, kind],
    ...pairs,
  ];
  const dashes = (name: string, text: string, lengths: readonly number[]): Pair[] =>
    entry(
      'LTYPE',
      TABLE.ltype,
      'AcDbLinetypeTableRecord',
      [2, name],
      [70, 0],
      [3, text],
      [72, 65],
      [73, lengths.length],
      [40, lengths.reduce((sum, l) => sum + Math.abs(l), 0)],
      ...lengths.flatMap((l): Pair[] => [
        [49, l],
        [74, 0],
      ]),
    );
  const layer = (name: string, colour: number, line: string): Pair[] =>
    entry(
      'LAYER',
      TABLE.layer,
      'AcDbLayerTableRecord',
      [2, name],
      [70, 0],
      [62, colour],
      [6, line],
      [390, 'F'],
    );
  const record = (name: string, id: string): Pair[] => [
    [0, 'BLOCK_RECORD'],
    [5, id],
    [330, RECORDS],
    [100, 'AcDbSymbolTableRecord'],
    [100, 'AcDbBlockTableRecord'],
    [2, name],
  ];
  return [
    [0, 'SECTION'],
    [2, 'TABLES'],
    ...table('VPORT', TABLE.vport, 0),
    ...table(
      'LTYPE',
      TABLE.ltype,
      4,
      dashes('ByBlock', '', []),
      dashes('ByLayer', '', []),
      dashes('CONTINUOUS', 'Solid line', []),
      dashes('CENTER', 'Long and short dashes', [32, -6, 6, -6]),
    ),
    ...table(
      'LAYER',
      TABLE.layer,
      LAYERS.length + 1,
      layer('0', 7, 'CONTINUOUS'),
      ...LAYERS.map((name) =>
        layer(name, LAYER_COLOURS[name], name === 'CENTRE-LINES' ? 'CENTER' : 'CONTINUOUS'),
      ),
    ),
    ...table(
      'STYLE',
      TABLE.style,
      1,
      entry(
        'STYLE',
        TABLE.style,
        'AcDbTextStyleTableRecord',
        [2, 'STANDARD'],
        [70, 0],
        [40, 0],
        [41, 1],
        [50, 0],
        [71, 0],
        [42, 2.5],
        [3, 'txt'],
        [4, ''],
      ),
    ),
    ...table('VIEW', TABLE.view, 0),
    ...table('UCS', TABLE.ucs, 0),
    ...table(
      'APPID',
      TABLE.appid,
      1,
      entry('APPID', TABLE.appid, 'AcDbRegAppTableRecord', [2, 'ACAD'], [70, 0]),
    ),
    ...table(
      'DIMSTYLE',
      TABLE.dimstyle,
      1,
      entry('DIMSTYLE', TABLE.dimstyle, 'AcDbDimStyleTableRecord', [2, 'STANDARD'], [70, 0]),
    ),
    ...table(
      'BLOCK_RECORD',
      RECORDS,
      2,
      record('*Model_Space', MODEL_SPACE),
      record('*Paper_Space', PAPER_SPACE),
    ),
    [0, 'ENDSEC'],
  ];
}

export function blocks2000(handle: () => string): Pair[] {
  const block = (name: string, owner: string, paper: boolean): Pair[] => {
    const common = (): Pair[] => [
      [5, handle()],
      [330, owner],
      [100, 'AcDbEntity'],
      ...(paper ? [[67, 1] as Pair] : []),
      [8, '0'],
    ];
    return [
      [0, 'BLOCK'],
      ...common(),
      [100, 'AcDbBlockBegin'],
      [2, name],
      [70, 0],
      [10, 0],
      [20, 0],
      [30, 0],
      [3, name],
      [1, ''],
      [0, 'ENDBLK'],
      ...common(),
      [100, 'AcDbBlockEnd'],
    ];
  };
  return [
    [0, 'SECTION'],
    [2, 'BLOCKS'],
    ...block('*Model_Space', MODEL_SPACE, false),
    ...block('*Paper_Space', PAPER_SPACE, true),
    [0, 'ENDSEC'],
  ];
}

export function objects2000(): Pair[] {
  const dictionary = (id: string, owner: string, ...entries: Pair[]): Pair[] => [
    [0, 'DICTIONARY'],
    [5, id],
    [330, owner],
    [100, 'AcDbDictionary'],
    [281, 1],
    ...entries,
  ];
  return [
    [0, 'SECTION'],
    [2, 'OBJECTS'],
    ...dictionary(ROOT, '0', [3, 'ACAD_GROUP'], [350, 'D'], [3, 'ACAD_PLOTSTYLENAME'], [350, 'E']),
    ...dictionary('D', ROOT),
    [0, 'ACDBDICTIONARYWDFLT'],
    [5, 'E'],
    [330, ROOT],
    [100, 'AcDbDictionary'],
    [281, 1],
    [3, 'Normal'],
    [350, 'F'],
    [100, 'AcDbDictionaryWithDefault'],
    [340, 'F'],
    [0, 'ACDBPLACEHOLDER'],
    [5, 'F'],
    [330, 'E'],
    [0, 'ENDSEC'],
  ];
}
