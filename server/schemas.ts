/** What requests carry and answers hold. The checks of requests, the OpenAPI description and its tests all come from here. */
import { z } from 'zod';
import { JobDocument, STAGES } from '#core/job/document.ts';
import { CARD_FORMAT, ResinCardDocument } from '#core/resin/card-document.ts';
import { OffcutMovement } from '#core/shelf/offcuts.ts';
import { Shop } from '#store/shop.ts';

export const Uuid = z.uuid().toLowerCase();
const SaveId = Uuid.describe('Names this save; made by the client. Sending it again changes nothing.');
const BaseVersion = z
  .number()
  .int()
  .min(0)
  .max(2_147_483_647)
  .describe('The version the edited document was read at');
const Version = z.number().int().min(1);
const SavedAt = z.iso.datetime().describe('UTC');

/** A job as sent: its texts are checked after the rest of the body, with an answer that names the field. */
const Unchecked = z.unknown();

export const NewJobBody = z.strictObject({
  id: Uuid.describe('Made by the client, best UUIDv7'),
  saveId: SaveId,
  document: JobDocument,
});
export const NewJobEnvelope = NewJobBody.extend({ document: Unchecked });

export const SaveJobBody = z.strictObject({
  baseVersion: BaseVersion,
  saveId: SaveId,
  document: JobDocument,
});
export const SaveJobEnvelope = SaveJobBody.extend({ document: Unchecked });

export const SaveShopBody = z.strictObject({ baseVersion: BaseVersion, saveId: SaveId, shop: Shop });

export const ListQuery = z.strictObject({
  archived: z
    .enum(['true', 'false'])
    .optional()
    .describe('Only jobs in the archive, or only the others; left out: all'),
});

export const Health = z.strictObject({ ok: z.literal(true), version: z.string() });

export const Summary = z.strictObject({
  id: Uuid,
  title: z.string(),
  customerName: z.string(),
  stage: z.enum(STAGES),
  handOver: z.string().describe('YYYY-MM-DD or empty'),
  firstPourAt: z.string().describe('Local YYYY-MM-DDTHH:MM or empty'),
  version: Version,
  updatedAt: SavedAt,
  archived: z.boolean(),
});
export const JobList = z.strictObject({ jobs: z.array(Summary) });

export const Job = z.strictObject({
  id: Uuid,
  version: Version,
  savedAt: SavedAt,
  archived: z.boolean(),
  document: JobDocument,
});

export const Saved = z.strictObject({ version: Version, savedAt: SavedAt });

export const VersionList = z.strictObject({
  versions: z.array(z.strictObject({ version: Version, saveId: z.string(), savedAt: SavedAt })),
});
export const JobVersion = z.strictObject({ version: Version, savedAt: SavedAt, document: JobDocument });

export const Archived = z.strictObject({ archived: z.boolean() });

export const ShopAnswer = z.strictObject({
  version: z.number().int().min(0).describe('0: never saved, the shop is what a new one starts from'),
  savedAt: SavedAt.nullable(),
  shop: Shop,
});

const Refused = z.strictObject({
  id: z.string().describe('Of this request; the server log has the same'),
  code: z.string().describe('Stable, for programs'),
  message: z.string().describe('For people'),
});
export const ErrorAnswer = z.strictObject({ error: Refused });

export const ProblemsAnswer = z.strictObject({
  error: Refused,
  problems: z.array(
    z.strictObject({
      path: z.string().describe('In the document, as coats.0.film; empty: the document itself'),
      code: z.string(),
      message: z.string(),
      read: z.string().optional(),
      allowed: z.string().optional(),
    }),
  ),
});

export const JobConflict = z.strictObject({
  error: Refused,
  conflict: z.strictObject({
    current: z.strictObject({ version: Version, document: JobDocument }),
    base: JobDocument.nullable().describe('What the save was based on; null: no such version'),
  }),
});

export const ShopConflict = z.strictObject({
  error: Refused,
  conflict: z.strictObject({
    current: z.strictObject({ version: z.number().int().min(0), document: Shop }),
    base: Shop.nullable(),
  }),
});

/** Of a resin card: made by the client, the same as in its document. Small letters, figures and hyphens. */
export const ResinId = ResinCardDocument.shape.id;

export const NewResinBody = z.strictObject({ saveId: SaveId, document: ResinCardDocument });
export const NewResinEnvelope = NewResinBody.extend({ document: Unchecked });
export const SaveResinBody = z.strictObject({
  baseVersion: BaseVersion,
  saveId: SaveId,
  document: ResinCardDocument,
});
export const SaveResinEnvelope = SaveResinBody.extend({ document: Unchecked });

export const Resin = z.strictObject({
  id: ResinId,
  version: Version,
  savedAt: SavedAt,
  archived: z.boolean(),
  document: ResinCardDocument,
});
export const ResinList = z.strictObject({ resins: z.array(Resin) });

export const FittedResins = z.strictObject({
  cards: z.array(
    z.strictObject({
      archived: z.boolean(),
      card: z
        .looseObject({ id: ResinId, name: z.string() })
        .describe(
          `What a "${CARD_FORMAT}" document leads to: the constants of the resin and their uncertainty, SI`,
        ),
    }),
  ),
});

export const ResinConflict = z.strictObject({
  error: Refused,
  conflict: z.strictObject({
    current: z.strictObject({ version: Version, document: ResinCardDocument }),
    base: ResinCardDocument.nullable(),
  }),
});

export const MovementBody = z.strictObject({ movement: OffcutMovement });
export const MovementList = z.strictObject({
  movements: z
    .array(z.strictObject({ number: Version, at: SavedAt, movement: OffcutMovement }))
    .describe('Oldest first; what lies on the shelf follows from them'),
});
export const MovementSaved = z.strictObject({ number: Version, savedAt: SavedAt });

/** OpenAPI and JSON Schema documents, whose own grammar is not repeated here. */
export const AnyObject = z.looseObject({});
