/** Raised whenever a change alters a computed figure; kept with every frozen plan. */
export const MODEL_VERSION = '1';
