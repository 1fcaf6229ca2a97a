/** Paths and values of a job or a resin card in the words of the form, for putting two versions side by side. Pure. */
import { getAt, type Path } from '#web/draft/at-path.ts';

const words: Readonly<Record<string, string>> = {
  title: 'Title',
  customer: 'Customer',
  name: 'name',
  email: 'email',
  phone: 'phone',
  address: 'address',
  agreed: 'Agreed',
  stage: 'stage',
  look: 'look',
  handOver: 'promised day',
  price: 'price',
  notes: 'notes',
  piece: 'Piece',
  otherPieces: 'Further pieces',
  pieces: 'pieces it is poured on',
  outline: 'outline',
  length: 'length',
  width: 'width',
  diameter: 'diameter',
  cornerRadius: 'corner radius',
  insideRadius: 'inner corner radius',
  returnLength: 'reach of the return',
  returnWidth: 'depth of the return',
  side: 'side',
  corners: 'corners',
  bodyThickness: 'body thickness',
  board: 'board',
  boardThickness: 'board thickness',
  edges: 'edges',
  kind: 'kind',
  faceHeight: 'face height',
  profile: 'profile',
  profileSize: 'size of the profile',
  undersideReturn: 'carried under',
  countsAs: 'counts as',
  cutOuts: 'cut-outs',
  shape: 'shape',
  fromLeft: 'from the left',
  fromFront: 'from the front',
  turned: 'turned',
  rim: 'rim',
  room: 'Room',
  air: 'air',
  humidity: 'humidity',
  readings: 'readings',
  coats: 'Coats',
  resin: 'resin',
  film: 'film on the top',
  faceFilm: 'film on the faces',
  colours: 'colours',
  swatch: 'colour on the drawing',
  share: 'share',
  colourant: 'colourant',
  load: 'amount of colourant',
  appearance: 'how the colour looks',
  allowance: 'spare',
  resinTemperature: 'temperature of the parts',
  startsAt: 'start',
  crew: 'crew',
  largestCup: 'largest cup',
  record: 'Record',
  description: 'description',
  mix: 'Mix ratio',
  byVolume: 'by volume',
  byWeight: 'by weight',
  densityA: 'density of part A',
  densityB: 'density of part B',
  epoxyEquivalent: 'epoxy equivalent weight',
  label: 'Label',
  value: 'figure',
  mass: 'mass in the cup',
  temperature: 'temperature',
  end: 'ends at',
  colourantLimit: 'most colourant',
  observations: 'Observations',
  withdrawn: 'withdrawn',
  date: 'day',
  time: 'time',
  start: 'fresh mix at',
  reaches: 'reaches',
  result: 'result',
  note: 'note',
};

/** "Coats, Flood coat, film on the top". `document` is where names of list items are read. */
export function sayPath(path: Path, document: unknown): string {
  return path
    .map((step, i) => {
      if (typeof step !== 'number') return words[step] ?? step;
      const item = getAt(document, path.slice(0, i + 1));
      const { name, edge, kind } = (item ?? {}) as { name?: string; edge?: string; kind?: string };
      return edge ?? (name || kind || String(step + 1));
    })
    .join(', ');
}

/** A value as a person reads it: text as typed, lists by their names, nothing as "empty". */
export function sayValue(value: unknown): string {
  if (value === undefined) return 'not there';
  if (value === null || value === '') return 'empty';
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(sayValue).join('; ');
  if (typeof value === 'object')
    return Object.entries(value)
      .filter(([key, inner]) => key !== 'id' && inner !== '' && !(Array.isArray(inner) && inner.length === 0))
      .map(([key, inner]) => `${words[key] ?? key} ${sayValue(inner)}`)
      .join(', ');
  return String(value);
}
